import { monthsAfter } from "../calibration/months-after";

/** As the customer set it; of a serial, or of all where the serial is empty. */
export type IntervalRow = {
  readonly serial: string;
  /** null = not wanted */
  readonly months: number | null;
  readonly noticeDays: number;
};

/** A sensor's last certificate, and whether a newer calibration of it is under way. */
export type LastCalibration = {
  readonly serial: string;
  readonly typeLetter: string;
  readonly tag: string;
  readonly certificate: string;
  /** The last day it was measured on. */
  readonly performedOn: string;
  readonly orderNumber: string;
  readonly isHere: boolean;
  /** false: each of its certificates was withdrawn. */
  readonly stands: boolean;
};

export type DueStage = "withdrawn" | "overdue" | "due" | "later" | "under-way" | "no-interval";

export type SensorDue = LastCalibration & {
  readonly months: number | null;
  /** Whether the interval is the sensor's own, the one for all, or none. */
  readonly from: "own" | "all" | "none";
  readonly noticeDays: number;
  readonly dueOn: string | null;
  readonly stage: DueStage;
};

const dayMilliseconds = 86_400_000;
const daysUntil = (day: string, today: string): number =>
  (Date.parse(`${day}T00:00:00Z`) - Date.parse(`${today}T00:00:00Z`)) / dayMilliseconds;

/** The last that was said of this serial; where nothing was, the last that was said of all. */
export const intervalOf = (rows: readonly IntervalRow[], serial: string) => {
  const own = rows.findLast((row) => row.serial === serial && serial !== "");
  if (own) return { ...own, from: "own" as const };
  const all = rows.findLast((row) => row.serial === "");
  return all && all.months !== null
    ? { ...all, from: "all" as const }
    : { months: null, noticeDays: 30, from: "none" as const };
};

const stageOf = (
  { isHere, stands }: LastCalibration,
  { dueOn, noticeDays, today }: { dueOn: string | null; noticeDays: number; today: string },
): DueStage => {
  if (isHere) return "under-way";
  if (!stands) return "withdrawn";
  if (dueOn === null) return "no-interval";
  if (dueOn < today) return "overdue";
  return daysUntil(dueOn, today) <= noticeDays ? "due" : "later";
};

const order: Readonly<Record<DueStage, number>> = {
  withdrawn: 0,
  overdue: 1,
  due: 2,
  later: 3,
  "under-way": 4,
  "no-interval": 5,
};

/** Made once: a list of years is compared thousands of times. */
const alphabetical = new Intl.Collator("en");

/**
 * When each of a customer's sensors comes due by the customer's own interval, counted from the last day it was measured
 * on. What has no certificate any more comes first, without a day; then what is overdue, then by day.
 */
export const sensorsDue = (
  rows: readonly IntervalRow[],
  last: readonly LastCalibration[],
  today: string,
): readonly SensorDue[] =>
  last
    .map((calibration): SensorDue => {
      const { months, noticeDays, from } = intervalOf(rows, calibration.serial);
      const isCounted = calibration.stands && months !== null;
      const dueOn = isCounted ? monthsAfter(calibration.performedOn, months) : null;
      const stage = stageOf(calibration, { dueOn, noticeDays, today });
      return { ...calibration, months, noticeDays, from, dueOn, stage };
    })
    .toSorted(
      (a, b) =>
        order[a.stage] - order[b.stage] ||
        alphabetical.compare(a.dueOn ?? "", b.dueOn ?? "") ||
        alphabetical.compare(a.serial, b.serial),
    );

/** Within the customer's own notice, or past the day. */
export const isDueNow = ({ stage }: SensorDue): boolean => stage === "due" || stage === "overdue";

/** What a reminder has to tell: due or overdue, and not told of that day yet. */
export const toRemind = (
  due: readonly SensorDue[],
  told: readonly { readonly serial: string; readonly dueOn: string }[],
): readonly { readonly serial: string; readonly dueOn: string }[] => {
  const known = new Set(told.map(({ serial, dueOn }) => `${dueOn} ${serial}`));
  const open = due.flatMap((sensor) => {
    const { serial, dueOn } = sensor;
    return dueOn !== null && isDueNow(sensor) && !known.has(`${dueOn} ${serial}`) ? [{ serial, dueOn }] : [];
  });
  // Two sensors of one serial and one day are one line of the list of reminders.
  return [...new Map(open.map((one) => [`${one.dueOn} ${one.serial}`, one])).values()];
};
