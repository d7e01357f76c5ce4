import { loadAccountPolicy } from "@/lib/data/account/account-policy-store";
import { takeStep } from "@/lib/data/account/second-factor-store";
import type { Tx } from "@/lib/data/in-scope";
import { publicUrl } from "@/lib/data/public-url";
import { actUsed } from "@/lib/data/signing/begin-signing";
import { type LoadedSigner, loadSigner } from "@/lib/data/signing/load-signer";
import { isActUsed } from "@/lib/data/signing/signature-store";
import { loadSigningPolicy } from "@/lib/data/signing/signing-policy-store";
import { loadSigningSession } from "@/lib/data/signing/signing-session-store";
import { lockIfDue } from "@/lib/data/staff/lock-if-due";
import { insertAttempt, loadAttemptsForUpdate } from "@/lib/data/staff/sign-in-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { SigningAct } from "@/lib/domain/signing/act";
import { decideMeans } from "@/lib/domain/signing/decide-means";
import { decideSigner } from "@/lib/domain/signing/decide-signer";
import { signingEvents } from "@/lib/domain/signing/events";
import type { Proved } from "@/lib/domain/signing/proved";
import { isSigningSessionOpen } from "@/lib/domain/signing/session";
import type { Actor } from "@/lib/domain/staff/actor";
import { rememberedMilliseconds, signInDelay } from "@/lib/domain/staff/sign-in-delay";
import { type Clock, execute } from "../execute";
import { stepOfCode } from "../one-time-code";
import { defineOperation } from "../operation";
import { verifyPassword } from "../password-hash";

type Wrong = "wrong-password" | "wrong-code" | "code-used";

type Answer =
  | { readonly kind: "proved"; readonly proved: Proved }
  | { readonly kind: "wrong"; readonly wrong: Wrong };

const notSigned = "Nothing was signed; what you ticked is still here.";
const wrongWords: Readonly<
  Record<Wrong, { readonly field: "password" | "secretCode"; readonly text: string }>
> = {
  "wrong-password": { field: "password", text: "This is not your password." },
  "wrong-code": {
    field: "secretCode",
    text: "This code does not fit: type the one your authenticator shows now. Recovery codes do not sign.",
  },
  "code-used": {
    field: "secretCode",
    text: "This code was used already: wait for the next one, at most half a minute.",
  },
};

/** What of the typed is wrong; null: nothing. The code is used up only after a right password. */
const wrongOf = async (
  tx: Tx,
  { passwordHash, factor }: LoadedSigner,
  { password, code }: SigningAct,
  now: Date,
): Promise<Wrong | null> => {
  if (password !== "" && !(await verifyPassword(passwordHash, password))) return "wrong-password";
  if (code === "") return null;
  const step = factor && stepOfCode(factor.secret, code, now);
  if (factor === null || step === null) return "wrong-code";
  return (await takeStep(tx, factor.id, step)) ? null : "code-used";
};

/** Slowed down and locked as a sign-in is, on one count with it: one request of this person at a time. */
const demandNoWait = async (tx: Tx, email: string, now: Date): Promise<void> => {
  const since = new Date(now.getTime() - rememberedMilliseconds);
  const seconds = signInDelay(await loadAttemptsForUpdate(tx, email, since), now);
  if (seconds > 0)
    throw new Refused({
      code: "too-many",
      message: `Too many wrong tries: sign again in ${seconds} seconds. ${notSigned}`,
    });
};

/**
 * Who signs shows that they are there. A transaction of its own, which commits when what was typed is wrong: the failure
 * counts although nothing is signed.
 */
const prove = defineOperation({
  name: "signing/prove",
  permission: "review.decide",
  input: SigningAct,
  perform: async ({ actor, now, tx }, act) => {
    const signer =
      actor.kind === "staff" && actor.sessionId
        ? await loadSigner(tx, actor.personId, actor.sessionId)
        : null;
    if (!signer?.session)
      throw new Refused({
        code: "not-permitted",
        message: "Signing is done by a person who has signed in. Sign in, and sign again.",
      });
    // First, so that a request sent again counts no failure and uses no code up.
    if (await isActUsed(tx, act.actId)) throw actUsed();
    await demandNoWait(tx, signer.email, now);
    // Read under the lock of this address: a lock that fell a moment ago is seen.
    const locked = await tx.person.findUnique({ where: { id: signer.id }, select: { lockedUntil: true } });
    demand(decideSigner({ ...signer, ...locked }, await loadAccountPolicy(tx), now));
    const personSessionId = signer.session.id;
    const held = await loadSigningSession(tx, signer.id, personSessionId);
    const isContinued =
      held !== null && isSigningSessionOpen(held, personSessionId, await loadSigningPolicy(tx), now);
    const typed = { hasPassword: act.password !== "", hasCode: act.code !== "" };
    const means = demand(decideMeans({ isContinued, ...typed }));
    const wrong = await wrongOf(tx, signer, act, now);
    await insertAttempt(tx, signer.email, wrong === null, now);
    const { actId } = act;
    if (wrong !== null)
      return {
        value: { kind: "wrong", wrong } as Answer,
        events: [
          eventOf(signingEvents.refused, signer.id, { actId, reason: wrong }),
          ...(await lockIfDue(tx, signer.email, publicUrl(), now)),
        ],
      };
    const proved: Proved = {
      ...{ actId, personId: signer.id, personSessionId, means },
      signingSessionId: isContinued ? held.id : null,
    };
    return {
      value: { kind: "proved", proved } as Answer,
      events: [eventOf(signingEvents.proved, signer.id, { actId, means })],
    };
  },
});

/** The proof for one act, or the refusal. Before the transaction of what is signed: `first` of an operation. */
export const proveAct = async (actor: Actor, act: SigningAct, clock: Clock): Promise<Proved> => {
  const answer = await execute(prove, actor, act, clock);
  if (answer.kind === "proved") return answer.proved;
  const { field, text } = wrongWords[answer.wrong];
  throw new Refused({ code: "invalid", message: notSigned, fields: { [field]: text } });
};
