import { ok, type Result, refuse } from "../refusal";

const hour = 3_600_000;
/** A gate holds for the run that starts after it: until the same time on the next day, for runs overnight. */
const holdsHours = 24;
/** A scanner's clock set to another zone cannot be told from a gate passed late; beyond half a day it is another run. */
const clockHours = 12;

/**
 * No reading before the gate: the first one of a run has to have been taken after its gate was passed, as far as the
 * scanner's clock can tell, and within a day of it.
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
  const afterGate = startedAt.getTime() - passedAt.getTime();
  if (afterGate < -clockHours * hour)
    return refuse(
      "rule",
      `The first reading is of ${day(startedAt)}, before run ${run.number} passed its gate on ${day(passedAt)}. Check the scanner's clock. Nothing was stored.`,
    );
  if (afterGate > holdsHours * hour)
    return refuse(
      "rule",
      `Run ${run.number} passed its gate on ${day(passedAt)}; the first reading is of ${day(startedAt)}. What was checked that day says nothing of this one. Plan the run anew. Nothing was stored.`,
    );
  return ok("take");
};
