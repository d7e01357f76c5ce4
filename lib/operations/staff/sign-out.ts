import { z } from "zod";
import { endSessions } from "@/lib/data/staff/person-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { defineOperation } from "../operation";

/** Ends every session of the actor. A session cookie that somebody copied would otherwise outlive the sign-out. */
export const signOut = defineOperation({
  name: "staff/sign-out",
  permission: "signed-in",
  input: z.strictObject({}),
  perform: async ({ actor, tx }) => {
    if (actor.kind === "system")
      throw new Refused({ code: "not-permitted", message: "The platform has no session." });
    await endSessions(tx, actor.personId);
    return { value: null, events: [eventOf(staffEvents.signedOut, actor.personId, {})] };
  },
});
