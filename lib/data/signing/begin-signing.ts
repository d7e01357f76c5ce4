import { demand, Refused } from "@/lib/domain/refusal";
import { decideSigner } from "@/lib/domain/signing/decide-signer";
import type { Proved } from "@/lib/domain/signing/proved";
import { loadAccountPolicy } from "../account/account-policy-store";
import type { Tx } from "../in-scope";
import { loadSigner } from "./load-signer";
import { isActUsed } from "./signature-store";
import { continueSigningSession, openSigningSession } from "./signing-session-store";

export type Signing = Proved & {
  readonly signingSessionId: string;
  /** As it is printed. */
  readonly printedName: string;
};

export const actUsed = (): Refused =>
  new Refused({
    code: "wrong-state",
    message:
      "This was signed already: the same form signs once. Look at what was signed; reload to sign more.",
  });

const gone = () =>
  new Refused({ code: "not-permitted", message: "You are signed out. Nothing was signed; sign in again." });

/**
 * In the transaction of what is signed: that the person still may, that this act was not carried out meanwhile, and the
 * session of signing that the signatures belong to.
 */
export const beginSigning = async (tx: Tx, proved: Proved | undefined, now: Date): Promise<Signing> => {
  if (!proved)
    throw new Refused({ code: "not-permitted", message: "Nobody proved to sign. Nothing was signed." });
  const { personId, personSessionId } = proved;
  if (await isActUsed(tx, proved.actId)) throw actUsed();
  const signer = await loadSigner(tx, personId, personSessionId);
  if (!signer) throw gone();
  demand(decideSigner(signer, await loadAccountPolicy(tx), now));
  if (proved.signingSessionId === null) {
    const signingSessionId = await openSigningSession(tx, { personId, personSessionId }, now);
    return { ...proved, signingSessionId, printedName: signer.name };
  }
  if (!(await continueSigningSession(tx, proved.signingSessionId, now))) throw gone();
  return { ...proved, signingSessionId: proved.signingSessionId, printedName: signer.name };
};
