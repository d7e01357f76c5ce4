import { ok, type Result, refuse } from "../refusal";

// The day may already have begun where the customer is: zones reach 14 hours ahead of UTC.
const latestDay = (now: Date): string => new Date(now.getTime() + 14 * 3_600_000).toISOString().slice(0, 10);

/** Refuses, at its field, a day (YYYY-MM-DD, or empty) that has not begun anywhere yet. */
export const decidePastDay = (field: string, day: string, now: Date, what: string): Result<"past"> =>
  day <= latestDay(now)
    ? ok("past")
    : refuse("invalid", "Some fields need another look. Nothing was stored; what you typed is still here.", {
        [field]: `This day is still to come. Write the day on which ${what}.`,
      });
