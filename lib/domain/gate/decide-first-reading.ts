import { ok, type Result, refuse } from "../refusal";

const hour = 3_600_000;
/** A gate holds for the run that starts after it: until the same time on the next day, for runs overnight. */
const holdsHours = 24;

/**
 * No reading before the gate: the first one of a run has to have been taken on the day its gate was passed, or within
 * a day after. Clocks of scanners differ from ours, so the hour within the day is not judged.
 */
export const decideFirstReading = (
  run: { readonly number: string },
  passedAt: Date | null,
  startedAt: Date,
): Result<"take"> => {
  if (!passedAt)
    return refuse(
      "rule",
      `Run ${run.number} has not passed its gate, so it has not started. Pass the gate first; the readings were not stored.`,
    );
  const day = (moment: Date): string => moment.toISOString().slice(0, 10);
  if (day(startedAt) < day(passedAt))
    return refuse(
      "rule",
      `The first reading is of ${day(startedAt)}, before run ${run.number} passed its gate on ${day(passedAt)}. Check the scanner's clock. Nothing was stored.`,
    );
  if (startedAt.getTime() > passedAt.getTime() + holdsHours * hour)
    return refuse(
      "rule",
      `Run ${run.number} passed its gate on ${day(passedAt)}; the first reading is of ${day(startedAt)}. What was checked that day says nothing of this one. Plan the run anew. Nothing was stored.`,
    );
  return ok("take");
};
