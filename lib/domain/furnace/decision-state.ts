export type DecisionState = "waiting" | "accepted" | "returned";

/** The last decision counts; none yet: it waits for another person. Decisions in the order they were taken. */
export const decisionState = (decisions: readonly { readonly decision: string }[]): DecisionState => {
  const last = decisions.at(-1);
  if (!last) return "waiting";
  return last.decision === "accepted" ? "accepted" : "returned";
};
