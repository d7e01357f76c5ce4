import { z } from "zod";
import { loadPerson, saveLock } from "@/lib/data/staff/person-store";
import { insertAttempt } from "@/lib/data/staff/sign-in-store";
import { accountEvents } from "@/lib/domain/account/events";
import { isLocked } from "@/lib/domain/account/lock";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** Before its time. The slow-down ends with it: counting begins anew. */
export const unlockPerson = defineOperation({
  name: "account/unlock",
  permission: "person.manage",
  input: z.strictObject({ personId: z.uuid() }),
  perform: async ({ now, tx }, { personId }) => {
    const person = await loadPerson(tx, personId);
    if (!person) throw new Refused({ code: "not-found", message: "This person is not here." });
    if (!isLocked(person.lockedUntil, now))
      throw new Refused({ code: "wrong-state", message: "This account is not locked. Nothing was changed." });
    await saveLock(tx, personId, null);
    await insertAttempt(tx, person.email, true, now);
    return { value: { id: personId }, events: [eventOf(accountEvents.unlocked, personId, {})] };
  },
});
