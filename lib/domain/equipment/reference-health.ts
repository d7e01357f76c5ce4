import type { LogEntry } from "./logbook";

type Use = {
  readonly on: string;
  readonly hoursInFurnace: number;
  readonly hoursAbove1000: number;
  readonly highestCelsius: number;
};

export type Wear = {
  readonly immersions: number;
  readonly hoursInFurnace: number;
  readonly hoursAbove1000: number;
  readonly highestCelsius: number | null;
};

export type ReferenceHealth = {
  readonly ever: Wear;
  /** From the day of the calibration in force, and of the last anneal; null where there is none. */
  readonly sinceCalibration: Wear | null;
  readonly sinceAnneal: Wear | null;
  readonly anneals: number;
  readonly lastAnneal: LogEntry | null;
};

const sumOf = (uses: readonly Use[], figure: (use: Use) => number): number =>
  uses.reduce((total, use) => total + figure(use), 0);

const wearOf = (uses: readonly Use[]): Wear => ({
  immersions: uses.length,
  hoursInFurnace: sumOf(uses, ({ hoursInFurnace }) => hoursInFurnace),
  hoursAbove1000: sumOf(uses, ({ hoursAbove1000 }) => hoursAbove1000),
  highestCelsius: uses.length === 0 ? null : Math.max(...uses.map(({ highestCelsius }) => highestCelsius)),
});

/** Hours above 1000 °C that a reference had been used for before a day. */
export const hoursBefore = (uses: readonly Use[], day: string): number =>
  sumOf(
    uses.filter(({ on }) => on < day),
    ({ hoursAbove1000 }) => hoursAbove1000,
  );

/** What its runs have cost a reference, and what was done for it; a run of the day itself counts as after. */
export const referenceHealth = (
  uses: readonly Use[],
  entries: readonly LogEntry[],
  calibratedOn: string | null,
): ReferenceHealth => {
  const anneals = entries.filter(({ kind }) => kind === "anneal");
  const lastAnneal = anneals.at(-1) ?? null;
  const since = (day: string): Wear => wearOf(uses.filter(({ on }) => on >= day));
  return {
    ever: wearOf(uses),
    sinceCalibration: calibratedOn === null ? null : since(calibratedOn),
    sinceAnneal: lastAnneal && since(lastAnneal.happenedOn),
    anneals: anneals.length,
    lastAnneal,
  };
};
