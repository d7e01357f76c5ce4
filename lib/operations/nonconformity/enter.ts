import { enter } from "@/lib/data/nonconformity/enter";
import { demandStory } from "@/lib/data/nonconformity/load-story";
import { EntryInput } from "@/lib/domain/nonconformity/schema";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** A note, the correction, the cause or the corrective action. */
export const enterNonconformity = defineOperation({
  name: "nonconformity/enter",
  permission: "nonconformity.open",
  input: EntryInput,
  perform: async ({ actor, now, tx }, { number, version, kind, text }) => {
    const loaded = await demandStory(tx, number, version);
    const event = await enter(tx, loaded, { kind, text, saidById: personIdOf(actor), saidAt: now });
    return { value: { number }, events: [event] };
  },
});
