import type { Sha256 } from "../certificate/content-hash";
import { ok, type Result, refuse } from "../refusal";
import { type ResultName, resultKey } from "./result-name";
import { resultsToOpen } from "./results-to-open";
import type { ReviewException } from "./review-exception";

/** What a review rests on when it is asked what was looked at. */
export type OpenedInput = {
  /** Each result of the evaluation, also of sensors signed before; with words for its setpoint. */
  readonly results: readonly (ResultName & { readonly label: string })[];
  readonly exceptions: readonly ReviewException[];
  readonly seed: Uint8Array;
  /** To be stated in place of what a certificate states now: each of them is opened, whatever the lot says. */
  readonly anew?: readonly ResultName[];
  /** By the person who wants to sign, of this evaluation. */
  readonly opened: readonly ResultName[];
};

/** So many are named in a refusal; who opens them sees the rest counted on the run's page. */
const named = 3;

/** What must be opened, in the order of the results, and what of it this person has not. */
export const openedState = (given: OpenedInput & { readonly sha256: Sha256 }) => {
  const { named: byException, drawn } = resultsToOpen(given);
  const must = new Set([...byException, ...drawn, ...(given.anew ?? [])].map(resultKey));
  const opened = new Set(given.opened.map(resultKey));
  const mustOpen = given.results.filter((result) => must.has(resultKey(result)));
  return {
    mustOpen,
    unopened: mustOpen.filter((result) => !opened.has(resultKey(result))),
    drawn: new Set(drawn.map(resultKey)),
  };
};

/**
 * Nobody signs for a sensor whose remarkable results they have not opened, nor past the tenth that the lot names: the
 * signatory answers for what they looked at (ISO/IEC 17025:2017, 7.8.1.1).
 */
export const decideOpened = (
  given: OpenedInput & {
    readonly sha256: Sha256;
    /** Tags of the sensors to be signed for. */
    readonly sensors: readonly string[];
  },
): Result<null> => {
  const unopened = openedState(given).unopened.filter(({ sensor }) => given.sensors.includes(sensor));
  if (unopened.length === 0) return ok(null);
  const first = unopened.slice(0, named).map(({ sensor, label }) => `${sensor} at ${label}`);
  const more = unopened.length - first.length;
  return refuse(
    "rule",
    `You have not opened ${first.join(", ")}${more > 0 ? ` and ${more} more` : ""}, which must be looked at before these certificates are signed. Nothing was signed off; open them (n leads from one to the next) and sign again.`,
  );
};
