import { moveCharacterisationRun } from "@/lib/data/furnace/characterisation-run-store";
import {
  insertCharacterisationDecision,
  loadCharacterisation,
  loadMeasurers,
} from "@/lib/data/furnace/characterisation-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { decideAcceptance } from "@/lib/domain/furnace/decide-acceptance";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { DecideCharacterisationInput } from "@/lib/domain/furnace/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** A second person accepts a characterisation, measured or typed, or returns it with a reason. Runs use accepted ones only. */
export const decideCharacterisation = defineOperation({
  name: "furnace/decide-characterisation",
  permission: "furnace.accept",
  input: DecideCharacterisationInput,
  perform: async ({ actor, now, tx }, { id, decision, reason }) => {
    const found = await loadCharacterisation(tx, id);
    if (!found) throw new Refused({ code: "not-found", message: "This characterisation is not here." });
    const personId = personIdOf(actor);
    const measurerIds = await loadMeasurers(tx, found);
    demand(decideAcceptance({ personId, measurerIds, decisions: found.decisions }));
    await insertCharacterisationDecision(tx, {
      characterisationId: id,
      decision,
      reason,
      decidedById: personId,
      decidedAt: now,
    });
    if (found.characterisationRunId)
      await moveCharacterisationRun(tx, found.characterisationRunId, ["submitted"], decision);
    const { furnace, name } = found.configuration;
    const payload = { tag: furnace.tag, name, performedOn: isoDay(found.performedOn) };
    return {
      value: { id, furnaceId: furnace.id },
      events: [
        decision === "accepted"
          ? eventOf(furnaceEvents.characterisationAccepted, id, payload)
          : eventOf(furnaceEvents.characterisationReturned, id, { ...payload, reason }),
      ],
    };
  },
});
