import { randomUUID } from "node:crypto";
import { z } from "zod";
import { loadAccountPolicy } from "@/lib/data/account/account-policy-store";
import { inScope, type Tx } from "@/lib/data/in-scope";
import { insertMail } from "@/lib/data/mail/mail-store";
import { saveLock } from "@/lib/data/staff/person-store";
import {
  type Credentials,
  insertAttempt,
  loadAttemptsForUpdate,
  loadCredentials,
} from "@/lib/data/staff/sign-in-store";
import { accountEvents } from "@/lib/domain/account/events";
import { decideLock, isLocked, lockMemoryMilliseconds } from "@/lib/domain/account/lock";
import { eventOf } from "@/lib/domain/audit/define-event";
import { lockedNotice } from "@/lib/domain/mail/letters/account-notice";
import { staffEvents } from "@/lib/domain/staff/events";
import { rememberedMilliseconds, signInDelay } from "@/lib/domain/staff/sign-in-delay";
import { defineOperation } from "../operation";

const laboratory = { kind: "laboratory" } as const;

/**
 * The attempt is written down as failed before anything is looked at, under a lock for this address: guesses sent all
 * at once would otherwise each find no failure yet. It is a counter, not a fact; the facts are the events. Answers the
 * seconds to wait; 0 = it may be looked at.
 */
export const takeAttempt = (email: string, now: Date): Promise<number> =>
  inScope(laboratory, async (tx) => {
    const since = new Date(now.getTime() - rememberedMilliseconds);
    const seconds = signInDelay(await loadAttemptsForUpdate(tx, email, since), now);
    if (seconds === 0) await insertAttempt(tx, email, false, now);
    return seconds;
  });

/** Too many in a row: the account is shut for a while, and its owner, not whoever tries, is told. Once a lock. */
export const lockIfDue = async (tx: Tx, email: string, publicUrl: string | null, now: Date) => {
  const attempts = await loadAttemptsForUpdate(tx, email, new Date(now.getTime() - lockMemoryMilliseconds));
  // Read under the lock of this address: of two failures at once, one locks and the other finds it locked.
  const person = await loadCredentials(tx, email);
  if (!person?.active) return [];
  const until = decideLock(attempts, person.lockedUntil, await loadAccountPolicy(tx), now);
  if (!until) return [];
  await saveLock(tx, person.id, until);
  const locked = [eventOf(accountEvents.locked, person.id, { until: until.toISOString() })];
  if (publicUrl === null) return locked;
  const mail = { id: randomUUID(), kind: "account-notice", personId: person.id, digestId: null } as const;
  const letter = lockedNotice({ name: person.name, until, publicUrl });
  await insertMail(tx, { ...mail, recipient: person.email, ...letter }, publicUrl, now);
  return locked;
};

const refusalOf = (person: Credentials, reason: "wrong-password" | "wrong-code", now: Date) => {
  if (isLocked(person.lockedUntil, now)) return eventOf(accountEvents.refusedWhileLocked, person.id, {});
  if (reason === "wrong-code") return eventOf(accountEvents.codeRefused, person.id, {});
  return eventOf(staffEvents.signInRefused, person.id, { reason });
};

const unknownOrClosed = (id: string | undefined) => {
  const reason = id === undefined ? ("unknown-address" as const) : ("inactive" as const);
  return eventOf(staffEvents.signInRefused, id ?? "", { reason });
};

/** Why is told to the log, never to whoever tried. */
export const recordRefusal = defineOperation({
  name: "staff/refuse-sign-in",
  permission: "system",
  input: z.strictObject({
    email: z.string(),
    reason: z.enum(["wrong-password", "wrong-code"]),
    publicUrl: z.string(),
  }),
  perform: async ({ now, tx }, { email, reason, publicUrl }) => {
    const person = await loadCredentials(tx, email);
    const refused = person?.active ? refusalOf(person, reason, now) : unknownOrClosed(person?.id);
    return { value: null, events: [refused, ...(await lockIfDue(tx, email, publicUrl, now))] };
  },
});
