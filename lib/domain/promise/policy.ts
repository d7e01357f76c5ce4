/**
 * What a day is reckoned with where the laboratory's own records say nothing. Common practice, no source: each
 * laboratory's furnaces and people differ, and a promise may always be set by hand with a reason.
 */
export type PromisePolicy = {
  /** Where a furnace starts from, and below which it may be opened and unloaded. */
  readonly ambientCelsius: number;
  readonly openBelowCelsius: number;
  /** For a furnace whose record names no rate. */
  readonly rampUpCelsiusPerHour: number;
  readonly rampDownCelsiusPerHour: number;
  /** At a setpoint: settling, stability and the readings. */
  readonly dwellHours: number;
  readonly loadingHours: number;
  /** Places of a load that are not the customer's. */
  readonly referencesPerLoad: number;
  /** Hours of the day (UTC) in which somebody is beside a heating furnace; it cools without company. */
  readonly dayStartsHour: number;
  readonly dayEndsHour: number;
  /** 1 = Monday. */
  readonly workingDays: readonly number[];
  /** Working days between the last load and the certificates: evaluation, review, sign-off. */
  readonly reviewDays: number;
};

export const defaultPromisePolicy: PromisePolicy = {
  ambientCelsius: 25,
  openBelowCelsius: 60,
  rampUpCelsiusPerHour: 300,
  rampDownCelsiusPerHour: 150,
  dwellHours: 0.75,
  loadingHours: 1,
  referencesPerLoad: 2,
  dayStartsHour: 8,
  dayEndsHour: 17,
  workingDays: [1, 2, 3, 4, 5],
  reviewDays: 2,
};
