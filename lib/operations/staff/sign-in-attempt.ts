import { z } from "zod";
import { inScope } from "@/lib/data/in-scope";
import { lockIfDue } from "@/lib/data/staff/lock-if-due";
import {
  type Credentials,
  insertAttempt,
  loadAttemptsForUpdate,
  loadCredentials,
} from "@/lib/data/staff/sign-in-store";
import { accountEvents } from "@/lib/domain/account/events";
import { isLocked } from "@/lib/domain/account/lock";
import { eventOf } from "@/lib/domain/audit/define-event";
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
