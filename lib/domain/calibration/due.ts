/** in date · due within 30 days · out of date · never calibrated */
export type DueState = "in-date" | "due" | "out-of-date" | "none";

export const dueLabels: Readonly<Record<DueState, string>> = {
  "in-date": "In date",
  due: "Due within 30 days",
  "out-of-date": "Out of date",
  none: "No calibration recorded",
};

/** The day of a moment, in UTC, as ISO text: days compare as text. */
export const isoDay = (moment: Date): string => moment.toISOString().slice(0, 10);

const dayMilliseconds = 86_400_000;
export const noticeDays = 30;

/** A standard is good through its due day, and out of date from the next. */
export const dueState = (dueOn: string | null, today: string): DueState => {
  if (dueOn === null) return "none";
  if (dueOn < today) return "out-of-date";
  const left = (Date.parse(`${dueOn}T00:00:00Z`) - Date.parse(`${today}T00:00:00Z`)) / dayMilliseconds;
  return left <= noticeDays ? "due" : "in-date";
};
