import { ok, type Result, refuse } from "../refusal";
import { type DatedKey, keyState } from "./key-state";

const day = (at: Date): string => at.toISOString().slice(0, 10);

const remedies: Readonly<Record<string, string>> = {
  file: "Name the file of another key in SEAL_KEY_FILE and start again.",
  "self-issued": "Start again: the laboratory then makes itself another key.",
};

/** Whether a key may seal now. Documents wait until one may: nothing is issued under a key that no longer counts. */
export const decideMaySeal = (
  key: DatedKey & { readonly fingerprint: string; readonly origin: string },
  now: Date,
): Result<null> => {
  const state = keyState(key, now);
  const which = `The seal’s key ${key.fingerprint.slice(0, 16)}…`;
  const remedy = remedies[key.origin] ?? "";
  switch (state.kind) {
    case "in-force":
    case "ends-soon":
      return ok(null);
    case "not-yet":
      return refuse("rule", `${which} is in force only from ${day(key.notBefore)}. ${remedy}`);
    case "expired":
      return refuse("rule", `${which} ended on ${day(key.notAfter)}. ${remedy}`);
    default:
      return refuse("rule", `${which} was ${state.kind} from ${day(state.from)}. ${remedy}`);
  }
};
