import { calibrationInForce } from "./in-force";

export type Acceptance = "waiting" | "accepted" | "rejected";

type Decided = { readonly decision: string; readonly decidedAt: Date };
type Decidable = { readonly performedOn: string; readonly decisions: readonly Decided[] };

/** The last decision counts; none yet: it waits for a second person. Decisions in the order they were taken. */
export const acceptanceOf = (decisions: readonly Pick<Decided, "decision">[]): Acceptance => {
  const last = decisions.at(-1)?.decision;
  return last === "accepted" || last === "rejected" ? last : "waiting";
};

/**
 * The calibration in force on a day, as far as it was accepted by a moment. A run asks with the moment it was made, so
 * that no later certificate, acceptance or rejection changes what its results stand on.
 */
export const acceptedInForce = <C extends Decidable>(
  calibrations: readonly C[],
  { day, moment }: { readonly day: string; readonly moment: Date },
): C | null =>
  calibrationInForce(
    calibrations.filter(
      ({ decisions }) =>
        acceptanceOf(decisions.filter(({ decidedAt }) => decidedAt <= moment)) === "accepted",
    ),
    day,
  );
