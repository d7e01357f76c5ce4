import {
  countOtherQualityManagers,
  loadPerson,
  replaceRoles,
  savePerson,
} from "@/lib/data/staff/person-store";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { decideRoles } from "@/lib/domain/staff/rules";
import { PersonChange } from "@/lib/domain/staff/schema";
import { defineOperation } from "../operation";

/** Name, address and roles. A change of address or roles ends the person's sessions; they sign in again. */
export const changePerson = defineOperation({
  name: "staff/change-person",
  permission: "person.manage",
  input: PersonChange,
  perform: async ({ now, tx }, { id, version, name, email, roles }) => {
    const before = await loadPerson(tx, id);
    if (!before) throw new Refused({ code: "not-found", message: "This person is not here." });
    const to = demand(decideRoles(before, roles, await countOtherQualityManagers(tx, id)));
    const changed = [
      ...(before.name === name ? [] : (["name"] as const)),
      ...(before.email === email ? [] : (["email"] as const)),
    ];
    const rolesDiffer = before.roles.toSorted().join() !== to.toSorted().join();
    const events: AuditEvent[] = [];
    if (changed.length > 0) events.push(eventOf(staffEvents.personChanged, id, { changed }));
    if (rolesDiffer) events.push(eventOf(staffEvents.rolesChanged, id, { from: before.roles, to: [...to] }));
    const [first, ...others] = events;
    if (!first) throw new Refused({ code: "rule", message: "Nothing differs from what is stored." });
    await savePerson(tx, id, version, { name, email }, rolesDiffer || changed.includes("email") ? now : null);
    if (rolesDiffer) await replaceRoles(tx, id, to);
    return { value: { id }, events: [first, ...others] };
  },
});
