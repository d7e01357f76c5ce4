import { z } from "zod";
import { endSessionsOf } from "@/lib/data/account/session-store";
import { accountEvents } from "@/lib/domain/account/events";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** Every session of one's own but the one that asks. */
export const endOtherSessions = defineOperation({
  name: "account/end-other-sessions",
  permission: "signed-in",
  input: z.strictObject({}),
  perform: async ({ actor, now, tx }) => {
    if (actor.kind === "system" || !actor.sessionId)
      throw new Refused({ code: "not-permitted", message: "There is no session to stay in." });
    const ended = await endSessionsOf(tx, actor.personId, now, actor.sessionId);
    if (ended === 0)
      throw new Refused({ code: "wrong-state", message: "There is no other session. Nothing was changed." });
    return { value: ended, events: [eventOf(accountEvents.otherSessionsEnded, actor.personId, {})] };
  },
});
