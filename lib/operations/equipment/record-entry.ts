import { loadEquipment, saveEquipment } from "@/lib/data/equipment/equipment-store";
import { insertEntry, loadLogbook } from "@/lib/data/equipment/logbook-store";
import { keepDocument } from "@/lib/data/evidence/keep-document";
import type { Tx } from "@/lib/data/in-scope";
import { openSuspect } from "@/lib/data/nonconformity/open-suspect";
import { eventOf } from "@/lib/domain/audit/define-event";
import { documentType } from "@/lib/domain/calibration/document-type";
import { isoDay } from "@/lib/domain/calibration/due";
import { decideEntry } from "@/lib/domain/equipment/decide-entry";
import { equipmentEvents } from "@/lib/domain/equipment/events";
import { entryKindLabels } from "@/lib/domain/equipment/labels";
import { EntryInput } from "@/lib/domain/equipment/schema";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

type Attached = { readonly fileName: string; readonly bytes: Uint8Array } | undefined;

const keep = async (
  tx: Tx,
  file: Attached,
  by: { readonly receivedById: string; readonly receivedAt: Date },
): Promise<string | null> => {
  if (!file) return null;
  const mediaType = documentType(file.bytes);
  if (!mediaType)
    throw new Refused({
      code: "invalid",
      message: "Nothing was stored; what you typed is still here.",
      fields: { document: "This is no PDF, no image (PNG or JPEG) and no XML." },
    });
  return keepDocument(tx, { ...file, mediaType, ...by });
};

/** Writes into the logbook. What the entry says of the equipment follows at once: a failed check makes it suspect. */
export const recordEntry = defineOperation({
  name: "equipment/record-entry",
  permission: "equipment.record",
  input: EntryInput,
  perform: async ({ actor, now, tx }, { id, happenedOn, outcome: said, summary, figures, document }) => {
    const equipment = await loadEquipment(tx, id);
    if (!equipment) throw new Refused({ code: "not-found", message: "This equipment is not here." });
    const entries = await loadLogbook(tx, id);
    const { outcome, state } = demand(
      decideEntry({ equipment, figures, said, happenedOn, today: isoDay(now), entries }),
    );
    const recordedById = personIdOf(actor);
    const documentId = await keep(tx, document, { receivedById: recordedById, receivedAt: now });
    const { kind } = figures;
    const entry = { kind, happenedOn, outcome, summary, figures, documentId, recordedById, recordedAt: now };
    await insertEntry(tx, id, entry);
    const changed = { ...(state ? { state } : {}), ...(kind === "move" ? { location: figures.to } : {}) };
    if (Object.keys(changed).length > 0) await saveEquipment(tx, id, equipment.version, changed);
    const { tag } = equipment;
    const written = eventOf(equipmentEvents.entryRecorded, id, { tag, entry: kind, happenedOn, outcome });
    if (!state) return { value: { id, state: equipment.state }, events: [written] };
    const reason = `its logbook has, on ${happenedOn}: ${entryKindLabels[kind].toLowerCase()}${outcome === "none" ? "" : `, ${outcome}`}`;
    const by = { openedById: recordedById, openedAt: now };
    const opened = state === "suspect" ? await openSuspect(tx, equipment, reason, by) : [];
    return {
      value: { id, state },
      events: [
        written,
        eventOf(equipmentEvents.stateSet, id, { tag, from: equipment.state, to: state, reason }),
        ...opened,
      ],
    };
  },
});
