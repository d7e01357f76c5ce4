import { countOtherManagers } from "@/lib/data/portal/colleague-store";
import { loadPerson, replaceRoles, savePerson } from "@/lib/data/staff/person-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideColleagueRoles } from "@/lib/domain/colleague/rules";
import { ColleagueRolesInput } from "@/lib/domain/colleague/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { staffEvents } from "@/lib/domain/staff/events";
import { defineOperation } from "../operation";

/** Reading is everybody's; ordering and inviting are given and taken here. */
export const changeColleagueRoles = defineOperation({
  name: "portal/change-colleague-roles",
  permission: "portal.manage",
  scope: "laboratory",
  input: ColleagueRolesInput,
  perform: async ({ actor, tx }, { id, version, roles }) => {
    const person = await loadPerson(tx, id);
    const customerId = demandOwn(actor, person?.customerId);
    if (!person) throw new Refused({ code: "not-found", message: "This is not here. Nothing was changed." });
    const others = await countOtherManagers(tx, customerId, id);
    const to = demand(decideColleagueRoles(person, roles, others));
    await savePerson(tx, id, version, {}, null);
    await replaceRoles(tx, id, to);
    const payload = { from: person.roles, to: [...to] };
    return { value: { id }, events: [eventOf(staffEvents.rolesChanged, id, payload)] };
  },
});
