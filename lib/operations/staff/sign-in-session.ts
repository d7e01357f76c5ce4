import { z } from "zod";
import { insertSession } from "@/lib/data/account/session-store";
import { inScope } from "@/lib/data/in-scope";
import { insertAttempt, loadCredentialsOf } from "@/lib/data/staff/sign-in-store";
import { accountEvents } from "@/lib/domain/account/events";
import { longestSessionMilliseconds, sessionKindFor } from "@/lib/domain/account/session";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { ownAccountOf } from "@/lib/domain/staff/actor";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

/** What the cookie then says of the session; nothing else goes into it. */
export type OpenedSession = {
  readonly personId: string;
  readonly sessionEpoch: number;
  readonly sessionId: string;
};

const openSession = defineOperation({
  name: "staff/sign-in",
  permission: "signed-in",
  input: z.strictObject({
    personId: z.uuid(),
    sessionEpoch: z.int(),
    atBench: z.boolean(),
    cameBy: z.enum(["password", "openid"]),
    hadCode: z.boolean(),
    device: z.string(),
  }),
  perform: async ({ now, tx }, { personId, sessionEpoch, atBench, cameBy, hadCode, device }) => {
    const person = await loadCredentialsOf(tx, personId, sessionEpoch);
    // Deactivated, or every session ended, while the password was being looked at.
    if (!person?.active) throw new Refused({ code: "not-permitted", message: "This account is closed." });
    await insertAttempt(tx, person.email, true, now);
    const roles = person.roles.map(({ role }) => role);
    const kind = sessionKindFor(atBench, roles);
    const endsAt = new Date(now.getTime() + longestSessionMilliseconds);
    const session = { personId, kind, cameBy, hadCode, device, startedAt: now, endsAt };
    const sessionId = await insertSession(tx, session);
    return {
      value: sessionId,
      events: [eventOf(accountEvents.signedIn, personId, { kind, cameBy, hadCode })],
    };
  },
});

type Begin = {
  readonly personId: string;
  readonly sessionEpoch: number;
  readonly atBench: boolean;
  readonly cameBy: "password" | "openid";
  readonly hadCode: boolean;
  readonly device: string;
};

/** Makes the row that the session lives by. Null where the person may not sign in any more. */
export const beginSession = async (begin: Begin, clock: Clock): Promise<OpenedSession | null> => {
  const { personId, sessionEpoch } = begin;
  try {
    const sessionId = await execute(openSession, ownAccountOf({ personId, name: "" }), begin, clock);
    return { personId, sessionEpoch, sessionId };
  } catch (error) {
    if (error instanceof Refused && error.refusal.code === "not-permitted") return null;
    throw error;
  }
};

/** Whose account it is, for the second step of a sign-in. */
export const credentialsOf = (personId: string, sessionEpoch: number) =>
  inScope({ kind: "laboratory" }, (tx) => loadCredentialsOf(tx, personId, sessionEpoch));
