import { z } from "zod";
import { countOtherQualityManagers, loadPerson, savePerson } from "@/lib/data/staff/person-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { decideDeactivation } from "@/lib/domain/staff/rules";
import { rowVersion } from "@/lib/domain/typed-text";
import { defineOperation } from "../operation";

/** A person is never deleted: what they did stays theirs. Deactivated, they have no session and cannot sign in. */
export const setPersonActive = defineOperation({
  name: "staff/set-active",
  permission: "person.manage",
  input: z.strictObject({ id: z.uuid(), version: rowVersion, active: z.boolean() }),
  perform: async ({ actor, now, tx }, { id, version, active }) => {
    const person = await loadPerson(tx, id);
    if (!person) throw new Refused({ code: "not-found", message: "This person is not here." });
    if (person.active === active)
      throw new Refused({ code: "wrong-state", message: "That is so already; nothing was changed." });
    if (!active) {
      const by = actor.kind === "system" ? null : actor.personId;
      demand(decideDeactivation(person, by, await countOtherQualityManagers(tx, id)));
    }
    await savePerson(tx, id, version, { active }, now);
    const event = active ? staffEvents.personReactivated : staffEvents.personDeactivated;
    return { value: { id }, events: [eventOf(event, id, {})] };
  },
});
