import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import { loadLogbook } from "@/lib/data/equipment/logbook-store";
import { loadServicePolicy } from "@/lib/data/equipment/service-policy-store";
import type { Tx } from "@/lib/data/in-scope";
import { equipmentCandidate } from "@/lib/data/run/equipment-candidate";
import { loadStandards } from "@/lib/data/run/load-standards";
import { dueState, isoDay } from "@/lib/domain/calibration/due";
import { dueDay, serviceProblem } from "@/lib/domain/equipment/service-problem";
import { serviceStanding } from "@/lib/domain/equipment/service-standing";
import type { Equipment } from "@/lib/domain/equipment/types";
import { problemOfUse } from "@/lib/domain/run/equipment-problem";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "./view";

const calibrationOf = async (tx: Tx, { id, kind }: Equipment, now: Date) => {
  if (kind === "furnace") return { problem: null, certificate: null, dueOn: null, calibratedOn: null };
  const day = isoDay(now);
  const standard = (await loadStandards(tx, { ids: [id] }, { day, moment: now })).byId(kind, id);
  const inForce = standard?.calibration ?? null;
  return {
    problem: problemOfUse(equipmentCandidate(standard), kind, day)?.message ?? null,
    certificate: inForce?.certificate ?? null,
    dueOn: inForce?.dueOn ?? null,
    calibratedOn: inForce?.performedOn ?? null,
  };
};

/** What a label's code opens: may it be used now, in words that are read from a step away. By id or by tag. */
export const equipmentStatusView = (actor: Actor, id: string, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const equipment = found(await loadEquipment(tx, id));
    const day = isoDay(now);
    const { problem, certificate, dueOn, calibratedOn } = await calibrationOf(tx, equipment, now);
    const entries = await loadLogbook(tx, equipment.id);
    const standing = serviceStanding(equipment, entries, calibratedOn);
    const { policy } = await loadServicePolicy(tx);
    const against = problem ?? serviceProblem({ ...equipment, standing }, policy, day)?.message ?? null;
    return {
      id: equipment.id,
      tag: equipment.tag,
      kind: equipment.kind,
      serial: equipment.serial,
      location: equipment.location,
      state: equipment.state,
      against,
      certificate,
      dueOn,
      due: dueState(dueOn, day),
      checkDueOn: dueDay(standing.check, standing.since),
      maintenanceDueOn: dueDay(standing.maintenance, standing.since),
      lastEntry: entries.at(-1) ?? null,
    };
  });
