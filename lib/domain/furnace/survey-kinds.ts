/** What a characterisation measures; the same words as in the database. */
export const surveyKinds = ["axial", "positions", "stability", "immersion"] as const;
export type SurveyKind = (typeof surveyKinds)[number];

/** Without these a configuration is not characterised at a temperature. Immersion is measured where it may matter. */
export const neededKinds = ["axial", "positions", "stability"] as const satisfies readonly SurveyKind[];

export const surveyKindLabels: Readonly<Record<SurveyKind, string>> = {
  axial: "Axial uniformity",
  positions: "Differences between positions",
  stability: "Stability over time",
  immersion: "Immersion",
};

/**
 * Orders of magnitude for a good furnace: common practice, no source; over which length, at which temperature and whether
 * half or full range is not known. For a person to compare with, never for a budget.
 */
export const ordersOfMagnitude = {
  "bare-tube": { axialCelsius: 0.25, positionsCelsius: 0.5 },
  "equalising-block": { axialCelsius: 0.2, positionsCelsius: 0.25 },
  immersionMillimetre: 350,
} as const;
