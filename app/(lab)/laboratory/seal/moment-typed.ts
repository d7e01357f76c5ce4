/** "2026-11-26 14:05" in UTC, as the log writes it. Anything else is no date, which the operation refuses at its field. */
export const momentTyped = (typed: string): Date =>
  /^\d{4}-\d\d-\d\d \d\d:\d\d$/.test(typed)
    ? new Date(`${typed.replace(" ", "T")}:00Z`)
    : new Date(Number.NaN);
