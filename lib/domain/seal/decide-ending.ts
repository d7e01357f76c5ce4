import { ok, type Result, refuse } from "../refusal";
import type { Ending } from "./ending";

type Ended = { readonly takenUpAt: Date; readonly endings: readonly Ending[] };

/** Retired: it seals no more, and what it sealed stays good. Once. */
export const decideRetire = ({ endings }: Ended): Result<null> =>
  endings.length > 0 ? refuse("wrong-state", "This key has ended already. Nothing was changed.") : ok(null);

/**
 * Revoked: what it sealed from that moment on is not to be trusted. A retired key too, since it may turn out to be lost
 * later; not twice, because documents were judged by the first moment meanwhile.
 */
export const decideRevoke = ({ endings }: Ended, effectiveAt: Date, now: Date): Result<null> => {
  if (endings.some(({ kind }) => kind === "revoked"))
    return refuse("wrong-state", "This key is revoked already. Nothing was changed.");
  if (effectiveAt > now)
    return refuse("invalid", "A revocation tells what happened. Nothing was changed.", {
      effectiveAt: "Not in the future: say from when the key is not to be trusted.",
    });
  return ok(null);
};
