import { countOtherManagers } from "@/lib/data/portal/colleague-store";
import { loadPerson, savePerson } from "@/lib/data/staff/person-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideColleagueActive } from "@/lib/domain/colleague/rules";
import { ColleagueActiveInput } from "@/lib/domain/colleague/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { staffEvents } from "@/lib/domain/staff/events";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Whoever leaves keeps what they did and loses every session; whoever comes back signs in anew. */
export const setColleagueActive = defineOperation({
  name: "portal/set-colleague-active",
  permission: "portal.manage",
  scope: "laboratory",
  input: ColleagueActiveInput,
  perform: async ({ actor, now, tx }, { id, version, active }) => {
    const person = await loadPerson(tx, id);
    const customerId = demandOwn(actor, person?.customerId);
    if (!person) throw new Refused({ code: "not-found", message: "This is not here. Nothing was changed." });
    const others = await countOtherManagers(tx, customerId, id);
    demand(decideColleagueActive(person, active, personIdOf(actor), others));
    await savePerson(tx, id, version, { active }, now);
    const event = active ? staffEvents.personReactivated : staffEvents.personDeactivated;
    return { value: { id }, events: [eventOf(event, id, {})] };
  },
});
