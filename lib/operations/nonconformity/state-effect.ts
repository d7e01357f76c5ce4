import { enter } from "@/lib/data/nonconformity/enter";
import { loadImpact } from "@/lib/data/nonconformity/load-impact";
import { demandStory } from "@/lib/data/nonconformity/load-story";
import { EffectInput } from "@/lib/domain/nonconformity/schema";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** What it did to earlier results: every certificate that stands on it, with the change to expect against its U. */
export const stateEffect = defineOperation({
  name: "nonconformity/state-effect",
  permission: "nonconformity.decide",
  input: EffectInput,
  perform: async ({ actor, now, tx }, { number, version, text, deltaCelsius = null, from, until }) => {
    const loaded = await demandStory(tx, number, version);
    const subject = { kind: loaded.subjectKind, id: loaded.row.subjectId };
    const figures = await loadImpact(tx, subject, { deltaCelsius, from, until });
    const said = { saidById: personIdOf(actor), saidAt: now };
    const event = await enter(tx, loaded, { kind: "effect", text, figures, ...said });
    return { value: { number }, events: [event] };
  },
});
