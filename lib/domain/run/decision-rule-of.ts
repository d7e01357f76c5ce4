import type { DecisionRule } from "../evidence/schema";

/** The order's agreed rule in the evidence's words. */
export const decisionRuleOf = (order: {
  readonly decisionRule: string;
  readonly guardBandRatio: number | null;
}): DecisionRule => {
  if (order.decisionRule === "simple") return { kind: "simple" };
  if (order.decisionRule === "guarded" && order.guardBandRatio !== null)
    return { kind: "guarded", guardBandRatio: order.guardBandRatio };
  return { kind: "none" };
};
