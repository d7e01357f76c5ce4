import { insertInhomogeneityDecision, loadInhomogeneityTest } from "@/lib/data/furnace/inhomogeneity-store";
import { tagOfTested } from "@/lib/data/furnace/load-tested";
import { eventOf } from "@/lib/domain/audit/define-event";
import { decideAcceptance } from "@/lib/domain/furnace/decide-acceptance";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { DecideInhomogeneityInput } from "@/lib/domain/furnace/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

export const decideInhomogeneity = defineOperation({
  name: "furnace/decide-inhomogeneity",
  permission: "furnace.accept",
  input: DecideInhomogeneityInput,
  perform: async ({ actor, now, tx }, { id, decision, reason }) => {
    const test = await loadInhomogeneityTest(tx, id);
    if (!test) throw new Refused({ code: "not-found", message: "This test is not here." });
    const personId = personIdOf(actor);
    const measurerIds = new Set(test.recordedById ? [test.recordedById] : []);
    demand(decideAcceptance({ personId, measurerIds, decisions: test.decisions }));
    await insertInhomogeneityDecision(tx, {
      testId: id,
      decision,
      reason,
      decidedById: personId,
      decidedAt: now,
    });
    const tag = await tagOfTested(tx, test);
    return {
      value: { id },
      events: [eventOf(furnaceEvents.inhomogeneityDecided, id, { tag, decision, reason })],
    };
  },
});
