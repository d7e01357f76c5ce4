import { z } from "zod";
import { endSession } from "@/lib/data/account/session-store";
import { accountEvents } from "@/lib/domain/account/events";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** One session of one's own. Somebody else's looks as if it were not there. */
export const endOwnSession = defineOperation({
  name: "account/end-session",
  permission: "signed-in",
  input: z.strictObject({ sessionId: z.uuid() }),
  perform: async ({ actor, now, tx }, { sessionId }) => {
    const personId = personIdOf(actor);
    if (!(await endSession(tx, sessionId, personId, now)))
      throw new Refused({
        code: "not-found",
        message: "This session has ended already. Nothing was changed.",
      });
    return { value: null, events: [eventOf(accountEvents.sessionEnded, personId, {})] };
  },
});
