import { enter } from "@/lib/data/nonconformity/enter";
import { demandStory } from "@/lib/data/nonconformity/load-story";
import { StepInput } from "@/lib/domain/nonconformity/schema";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Opens it again, with the reason: what was done counts anew. */
export const reopenNonconformity = defineOperation({
  name: "nonconformity/reopen",
  permission: "nonconformity.decide",
  input: StepInput,
  perform: async ({ actor, now, tx }, { number, version, text }) => {
    const loaded = await demandStory(tx, number, version);
    const event = await enter(tx, loaded, {
      kind: "reopened",
      text,
      saidById: personIdOf(actor),
      saidAt: now,
    });
    return { value: { number }, events: [event] };
  },
});
