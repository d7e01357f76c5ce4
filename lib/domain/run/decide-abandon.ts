import { ok, type Result, refuse } from "../refusal";
import { asRunState, runStateLabels } from "./states";

/** Only what nobody handed over yet falls away; its readings stay. */
export const decideAbandon = (run: { readonly number: string; readonly state: string }): Result<null> => {
  const state = asRunState(run.state);
  if (state === "planned" || state === "measuring") return ok(null);
  return refuse(
    "wrong-state",
    state === "abandoned"
      ? `Run ${run.number} is abandoned already.`
      : `Run ${run.number} is ${runStateLabels[state].toLowerCase()} and cannot be abandoned: it was handed over for review. A signatory puts its sensors back instead. Nothing was changed.`,
  );
};
