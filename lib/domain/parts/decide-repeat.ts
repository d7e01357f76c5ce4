import { ok, type Result, refuse } from "../refusal";

/** Which measurement counts is said before the first reading of the new run, and only where there are two. */
export const decideRepeat = (given: {
  readonly run: { readonly number: string; readonly hasReadings: boolean; readonly state: string };
  readonly sensor: string;
  readonly isLoaded: boolean;
  readonly earlierRun: string | null;
  readonly isAuthorised: boolean;
}): Result<string> => {
  const { run, sensor, earlierRun } = given;
  if (!given.isLoaded) return refuse("not-found", `${sensor} is not in the load of run ${run.number}.`);
  if (run.state === "abandoned") return refuse("wrong-state", `Run ${run.number} is abandoned.`);
  if (run.hasReadings)
    return refuse(
      "wrong-state",
      `Run ${run.number} has readings already; a repeat is authorised before the first of them. Nothing was stored.`,
    );
  if (given.isAuthorised) return refuse("wrong-state", `The repeat of ${sensor} is authorised already.`);
  return earlierRun === null
    ? refuse(
        "rule",
        `${sensor} has no result of this set in another run: it is measured for the first time, and needs no authorisation.`,
      )
    : ok(earlierRun);
};

/** Before the first reading: no sensor is measured once more on somebody's own account. */
export const decideRepeatsAuthorised = (run: string, lacking: readonly string[]): Result<null> =>
  lacking.length === 0
    ? ok(null)
    : refuse(
        "rule",
        `${lacking.join(", ")} ${lacking.length === 1 ? "has" : "have"} results of this set from an earlier run. A signatory or the quality manager authorises the repeat on the load page of run ${run} first. Nothing was stored.`,
      );
