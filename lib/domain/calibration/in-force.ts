type Dated = { readonly performedOn: string };

/** The calibration that counted on a day: the last one performed on or before it. Later ones say nothing about then. */
export const calibrationInForce = <C extends Dated>(calibrations: readonly C[], day: string): C | null =>
  calibrations
    .filter((calibration) => calibration.performedOn <= day)
    .reduce<C | null>(
      (latest, calibration) =>
        latest === null || calibration.performedOn >= latest.performedOn ? calibration : latest,
      null,
    );
