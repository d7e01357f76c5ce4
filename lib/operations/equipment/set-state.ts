import { loadEquipment, saveEquipment } from "@/lib/data/equipment/equipment-store";
import { insertEntry, loadLogbook } from "@/lib/data/equipment/logbook-store";
import { openSuspect } from "@/lib/data/nonconformity/open-suspect";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { equipmentEvents } from "@/lib/domain/equipment/events";
import { gapWords, recordGaps } from "@/lib/domain/equipment/record-gaps";
import { EquipmentStateChange } from "@/lib/domain/equipment/schema";
import { isVerified } from "@/lib/domain/equipment/service-standing";
import { decideTransition } from "@/lib/domain/equipment/transitions";
import type { Equipment, EquipmentState } from "@/lib/domain/equipment/types";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

const demandWholeRecord = (equipment: Equipment, to: EquipmentState): void => {
  const gaps = to === "in-service" ? recordGaps(equipment) : [];
  if (gaps.length > 0)
    throw new Refused({
      code: "rule",
      message: "Its record is not whole. Nothing was stored.",
      fields: {
        state: `Change the record first: it does not say ${gaps.map((gap) => gapWords[gap]).join(", ")}.`,
      },
    });
};

/** One step. What takes it out of service is written into its logbook, so that it comes back by a verification only. */
export const setEquipmentState = defineOperation({
  name: "equipment/set-state",
  permission: "equipment.record",
  input: EquipmentStateChange,
  perform: async ({ actor, now, tx }, { id, version, state, reason }) => {
    const before = await loadEquipment(tx, id);
    if (!before) throw new Refused({ code: "not-found", message: "This equipment is not here." });
    const to = demand(decideTransition(before.state, state, isVerified(await loadLogbook(tx, id))));
    demandWholeRecord(before, to);
    if (to === "suspect" || to === "under-repair")
      await insertEntry(tx, id, {
        kind: "note",
        happenedOn: isoDay(now),
        outcome: "failed",
        summary: reason,
        figures: { kind: "note" },
        recordedById: personIdOf(actor),
        recordedAt: now,
      });
    await saveEquipment(tx, id, version, { state: to });
    const payload = { tag: before.tag, from: before.state, to, reason };
    const by = { openedById: personIdOf(actor), openedAt: now };
    const opened = to === "suspect" ? await openSuspect(tx, before, reason, by) : [];
    return { value: { id }, events: [eventOf(equipmentEvents.stateSet, id, payload), ...opened] };
  },
});
