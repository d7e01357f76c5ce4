import { ok, type Result, refuse } from "../refusal";
import { asRunState, canRunBecome, runStateLabels } from "./states";
import { assessTipCheck, type TipCheckSeen, tipCheckStateLabels } from "./tip-check";

export type SubmitFacts = {
  readonly run: { readonly number: string; readonly state: string };
  readonly tips: readonly { readonly place: string; readonly check: TipCheckSeen | null }[];
  readonly tipCheckReason: string;
  /** Setpoints (°C) with neither a window nor a state for every sensor. */
  readonly openSetpointsCelsius: readonly number[];
  /** none | outdated (something changed since) | current */
  readonly evaluation: "none" | "outdated" | "current";
};

export const decideSubmit = (facts: SubmitFacts): Result<"submit"> => {
  const state = asRunState(facts.run.state);
  if (!canRunBecome(state, "submitted"))
    return refuse(
      "wrong-state",
      `Run ${facts.run.number} is ${runStateLabels[state].toLowerCase()} and cannot be submitted now.`,
    );
  if (facts.openSetpointsCelsius.length > 0)
    return refuse(
      "rule",
      `Nothing is decided yet at ${facts.openSetpointsCelsius.join(", ")} °C. Accept a window there, or state every sensor as invalid or not reached.`,
    );
  if (facts.evaluation === "none")
    return refuse("rule", "The run is not evaluated yet. Evaluate it, look at the results, then submit.");
  if (facts.evaluation === "outdated")
    return refuse(
      "rule",
      "Something changed since the last evaluation. Evaluate again, look at the results, then submit.",
    );
  const moved = facts.tips.find(({ check }) => assessTipCheck(check) === "other-channels-moved");
  if (moved)
    return refuse(
      "rule",
      `When the tip in place ${moved.place} was warmed, other channels moved: the wiring is in doubt. Find out, warm the tips again, then submit.`,
    );
  const lacking = facts.tips.filter(({ check }) => assessTipCheck(check) !== "passed");
  if (lacking.length > 0 && facts.tipCheckReason === "")
    return refuse("invalid", "Not every tip check is there. Nothing was changed.", {
      tipCheckReason: `Warm the tips in place ${lacking.map(({ place, check }) => `${place} (${tipCheckStateLabels[assessTipCheck(check)].toLowerCase()})`).join(", ")}, or say why the channels are certain without it.`,
    });
  return ok("submit");
};
