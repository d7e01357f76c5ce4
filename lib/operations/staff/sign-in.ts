import { z } from "zod";
import { inScope } from "@/lib/data/in-scope";
import { insertAttempt, loadAttemptsForUpdate, loadCredentials } from "@/lib/data/staff/sign-in-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { ownAccountOf } from "@/lib/domain/staff/actor";
import { staffEvents } from "@/lib/domain/staff/events";
import { longestPassword } from "@/lib/domain/staff/password";
import { rememberedMilliseconds, signInDelay } from "@/lib/domain/staff/sign-in-delay";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";
import { nobodysHash, verifyPassword } from "./password-hash";

export type SignInAnswer =
  | { readonly kind: "welcome"; readonly personId: string; readonly sessionEpoch: number }
  | { readonly kind: "refused" }
  | { readonly kind: "wait"; readonly seconds: number };

const laboratory = { kind: "laboratory" } as const;

const recordSignIn = defineOperation({
  name: "staff/sign-in",
  permission: "signed-in",
  input: z.strictObject({ personId: z.uuid(), email: z.string() }),
  perform: async ({ now, tx }, { personId, email }) => {
    await insertAttempt(tx, email, true, now);
    return { value: null, events: [eventOf(staffEvents.signedIn, personId, {})] };
  },
});

const recordRefusal = defineOperation({
  name: "staff/refuse-sign-in",
  permission: "system",
  input: z.strictObject({
    personId: z.string(),
    reason: z.enum(["wrong-password", "unknown-address", "inactive"]),
  }),
  perform: async (_context, { personId, reason }) => ({
    value: null,
    events: [eventOf(staffEvents.signInRefused, personId, { reason })],
  }),
});

/**
 * The attempt is written down as failed before the password is looked at, under a lock for this address: guesses sent
 * all at once would otherwise each find no failure yet. It is a counter, not a fact; the facts are the events below.
 */
const takeAttempt = (email: string, now: Date) =>
  inScope(laboratory, async (tx) => {
    const since = new Date(now.getTime() - rememberedMilliseconds);
    const seconds = signInDelay(await loadAttemptsForUpdate(tx, email, since), now);
    if (seconds > 0) return { seconds, credentials: null };
    await insertAttempt(tx, email, false, now);
    return { seconds, credentials: await loadCredentials(tx, email) };
  });

/** One answer, and one cost in time, for a wrong password, an unknown address and a deactivated person. */
export const signIn = async (
  typed: { readonly email: string; readonly password: string },
  clock: Clock,
): Promise<SignInAnswer> => {
  const email = typed.email.trim().toLowerCase();
  if (email.length === 0 || email.length > 200 || typed.password.length > longestPassword)
    return { kind: "refused" };
  const { seconds, credentials } = await takeAttempt(email, clock());
  if (seconds > 0) return { kind: "wait", seconds };
  // Outside any transaction: hashing takes a while, and connections are few.
  const matches = await verifyPassword(credentials?.passwordHash ?? nobodysHash, typed.password);
  if (credentials?.active && matches) {
    const { id: personId, sessionEpoch } = credentials;
    await execute(recordSignIn, ownAccountOf({ personId, name: "" }), { personId, email }, clock);
    return { kind: "welcome", personId, sessionEpoch };
  }
  const reason = !credentials ? "unknown-address" : credentials.active ? "wrong-password" : "inactive";
  const personId = credentials?.id ?? "";
  await execute(recordRefusal, { kind: "system", name: "sign-in" }, { personId, reason }, clock);
  return { kind: "refused" };
};
