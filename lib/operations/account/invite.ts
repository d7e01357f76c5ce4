import { loadCustomer } from "@/lib/data/customer/customer-store";
import { Invitation } from "@/lib/domain/account/schema";
import { Refused } from "@/lib/domain/refusal";
import { customerRoles } from "@/lib/domain/staff/roles";
import { defineOperation } from "../operation";
import { writeInvitation } from "./write-invitation";

const refusedAt = (field: string, message: string): Refused =>
  new Refused({
    code: "invalid",
    message: "Nobody was invited; what you typed is still here.",
    fields: { [field]: message },
  });

/** By the laboratory: its own people with roles, or the first person of a customer, who then may invite colleagues. */
export const invitePerson = defineOperation({
  name: "account/invite",
  permission: "person.manage",
  input: Invitation,
  perform: async ({ actor, now, tx }, input) => {
    if (input.customerId && !(await loadCustomer(tx, input.customerId)))
      throw refusedAt("customerId", "Choose the customer from the list.");
    // Whoever manages people sees who signs in: saying so tells them nothing new.
    if (await tx.person.findUnique({ where: { email: input.email }, select: { id: true } }))
      throw refusedAt("email", "Somebody signs in with this address already.");
    const roles = input.customerId ? customerRoles : input.roles;
    const madeById = actor.kind === "system" ? null : actor.personId;
    return writeInvitation(tx, { ...input, roles, madeById }, now);
  },
});
