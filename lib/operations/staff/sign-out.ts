import { z } from "zod";
import { endSession } from "@/lib/data/account/session-store";
import { accountEvents } from "@/lib/domain/account/events";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** Ends the session that it is asked from, in the database: a cookie that somebody copied would outlive the sign-out. */
export const signOut = defineOperation({
  name: "staff/sign-out",
  permission: "signed-in",
  input: z.strictObject({}),
  perform: async ({ actor, now, tx }) => {
    if (actor.kind === "system" || !actor.sessionId)
      throw new Refused({ code: "not-permitted", message: "There is no session to sign out of." });
    await endSession(tx, actor.sessionId, actor.personId, now);
    return { value: null, events: [eventOf(accountEvents.signedOut, actor.personId, {})] };
  },
});
