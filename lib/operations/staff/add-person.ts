import { loadCustomer } from "@/lib/data/customer/customer-store";
import { insertPerson } from "@/lib/data/staff/person-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { namesItsOwner } from "@/lib/domain/staff/password";
import { customerRoles } from "@/lib/domain/staff/roles";
import { PersonInput } from "@/lib/domain/staff/schema";
import { defineOperation } from "../operation";
import { hashPassword } from "../password-hash";

export const addPerson = defineOperation({
  name: "staff/add-person",
  permission: "person.manage",
  input: PersonInput,
  perform: async ({ tx }, { password, ...input }) => {
    if (input.customerId && !(await loadCustomer(tx, input.customerId)))
      throw new Refused({
        code: "invalid",
        message: "Nothing was stored; what you typed is still here.",
        fields: { customerId: "Choose the customer from the list." },
      });
    if (namesItsOwner(password, input.email))
      throw new Refused({
        code: "invalid",
        message: "Nothing was stored. Type the password again; the rest is still here.",
        fields: { password: "It says whose it is: choose one without the e-mail address." },
      });
    const roles = input.customerId ? customerRoles : input.roles;
    const { id } = await insertPerson(tx, { ...input, roles, passwordHash: await hashPassword(password) });
    const payload = { roles: [...roles], customerId: input.customerId };
    return { value: { id }, events: [eventOf(staffEvents.personAdded, id, payload)] };
  },
});
