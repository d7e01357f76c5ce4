import { randomUUID } from "node:crypto";
import { z } from "zod";
import {
  countRecoveryCodes,
  loadSecondFactor,
  takeRecoveryCode,
  takeStep,
} from "@/lib/data/account/second-factor-store";
import { insertMail } from "@/lib/data/mail/mail-store";
import { loadCredentialsOf } from "@/lib/data/staff/sign-in-store";
import { accountEvents } from "@/lib/domain/account/events";
import { isLocked } from "@/lib/domain/account/lock";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { recoveryNotice } from "@/lib/domain/mail/letters/account-notice";
import { Refused } from "@/lib/domain/refusal";
import { type Clock, execute } from "../execute";
import { recoveryHash, stepOfCode } from "../one-time-code";
import { defineOperation } from "../operation";
import type { SignInAnswer } from "./sign-in";
import { recordRefusal, takeAttempt } from "./sign-in-attempt";
import { beginSession, credentialsOf } from "./sign-in-session";

const wrong = () =>
  new Refused({ code: "not-permitted", message: "This code does not open it, or was used already." });

/** Uses one code up: of the authenticator, or a recovery code. Each opens once, also for those who send it at once. */
const useCode = defineOperation({
  name: "staff/use-code",
  permission: "system",
  input: z.strictObject({
    personId: z.uuid(),
    sessionEpoch: z.int(),
    code: z.string().max(60),
    publicUrl: z.string(),
  }),
  perform: async ({ now, tx }, { personId, sessionEpoch, code, publicUrl }) => {
    const person = await loadCredentialsOf(tx, personId, sessionEpoch);
    const factor = person && (await loadSecondFactor(tx, personId));
    if (!person?.active || !factor || isLocked(person.lockedUntil, now)) throw wrong();
    const step = stepOfCode(factor.secret, code, now);
    if (step !== null) {
      if (!(await takeStep(tx, factor.id, step))) throw wrong();
      return { value: null, events: [eventOf(accountEvents.codeUsed, personId, {})] };
    }
    if (!(await takeRecoveryCode(tx, factor.id, recoveryHash(code), now))) throw wrong();
    const left = await countRecoveryCodes(tx, factor.id);
    const mail = { id: randomUUID(), kind: "account-notice", personId, digestId: null } as const;
    const letter = recoveryNotice({ name: person.name, left, publicUrl });
    await insertMail(tx, { ...mail, recipient: person.email, ...letter }, publicUrl, now);
    const used: AuditEvent = eventOf(accountEvents.recoveryCodeUsed, personId, { left });
    return { value: null, events: [used] };
  },
});

type Second = {
  readonly personId: string;
  readonly sessionEpoch: number;
  readonly code: string;
  readonly atBench: boolean;
  readonly cameBy: "password" | "openid";
  readonly device: string;
};

/** The second step of a sign-in, slowed down and locked like the first: the two share one count of failures. */
export const signInWithCode = async (
  typed: Second,
  clock: Clock,
  publicUrl: string,
): Promise<SignInAnswer> => {
  const { personId, sessionEpoch, code, atBench, cameBy, device } = typed;
  const person = await credentialsOf(personId, sessionEpoch);
  if (!person || code.length > 60) return { kind: "refused" };
  const seconds = await takeAttempt(person.email, clock());
  if (seconds > 0) return { kind: "wait", seconds };
  const door = { kind: "system", name: "sign-in" } as const;
  try {
    await execute(useCode, door, { personId, sessionEpoch, code, publicUrl }, clock);
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    const refusal = { email: person.email, reason: "wrong-code", publicUrl } as const;
    await execute(recordRefusal, door, refusal, clock);
    return { kind: "refused" };
  }
  const begin = { personId, sessionEpoch, atBench, cameBy, hadCode: true, device };
  const opened = await beginSession(begin, clock);
  return opened ? { kind: "welcome", ...opened } : { kind: "refused" };
};
