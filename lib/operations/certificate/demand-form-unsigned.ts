import type { Tx } from "@/lib/data/in-scope";
import { actUsed } from "@/lib/data/signing/begin-signing";
import { isActUsed } from "@/lib/data/signing/signature-store";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";

/** Who wants to sign, and that this form has signed nothing yet: a form sent twice is told so, whatever else has changed by it. */
export const demandFormUnsigned = async (
  tx: Tx,
  actor: Actor,
  actId: string,
): Promise<{ readonly personId: string; readonly name: string }> => {
  if (actor.kind !== "staff")
    throw new Refused({
      code: "not-permitted",
      message: "Signing is done by a person who has signed in. Sign in, and sign again.",
    });
  if (await isActUsed(tx, actId)) throw actUsed();
  return actor;
};
