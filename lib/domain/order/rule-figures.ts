import type { AgreedRule } from "./labels";

/** Each rule has its own figure; another's, typed and left, is not agreed. */
export const ruleFigures = (
  typed: AgreedRule,
): Pick<AgreedRule, "guardBandRatio" | "falseAcceptancePercent"> => ({
  guardBandRatio:
    typed.decisionRule === "guarded" || typed.decisionRule === "guarded-binary" ? typed.guardBandRatio : null,
  falseAcceptancePercent: typed.decisionRule === "target-risk" ? typed.falseAcceptancePercent : null,
});
