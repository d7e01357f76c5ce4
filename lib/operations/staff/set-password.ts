import { z } from "zod";
import { loadPerson, savePasswordHash } from "@/lib/data/staff/person-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { NewPassword, namesItsOwner } from "@/lib/domain/staff/password";
import { defineOperation } from "../operation";
import { hashPassword } from "../password-hash";

/** For somebody who lost theirs: told by word of mouth, and changed by the person at their next sign-in. */
export const setPassword = defineOperation({
  name: "staff/set-password",
  permission: "person.manage",
  input: z.strictObject({ id: z.uuid(), password: NewPassword }),
  perform: async ({ now, tx }, { id, password }) => {
    const person = await loadPerson(tx, id);
    if (!person) throw new Refused({ code: "not-found", message: "This person is not here." });
    if (namesItsOwner(password, person.email))
      throw new Refused({
        code: "invalid",
        message: "Nothing was stored.",
        fields: { password: "It says whose it is: choose one without the e-mail address." },
      });
    await savePasswordHash(tx, id, await hashPassword(password), now);
    return { value: { id }, events: [eventOf(staffEvents.passwordSet, id, {})] };
  },
});
