import { loadCalibrationsOf } from "@/lib/data/calibration/calibration-store";
import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import { readEntry } from "@/lib/data/equipment/logbook-store";
import { loadRunsOn } from "@/lib/data/equipment/runs-on";
import { loadServicePolicy } from "@/lib/data/equipment/service-policy-store";
import type { Tx } from "@/lib/data/in-scope";
import { calibrationInForce } from "@/lib/domain/calibration/in-force";
import { checkCharts } from "@/lib/domain/equipment/check-chart";
import { lastGoodEvidence } from "@/lib/domain/equipment/last-good-evidence";
import { recordGaps } from "@/lib/domain/equipment/record-gaps";
import { dueDay, serviceFindings } from "@/lib/domain/equipment/service-problem";
import { isVerified, serviceStanding } from "@/lib/domain/equipment/service-standing";
import { decideTransition, transitions } from "@/lib/domain/equipment/transitions";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

const loadEntries = async (tx: Tx, equipmentId: string) => {
  const rows = await tx.equipmentEntry.findMany({ where: { equipmentId }, orderBy: { id: "asc" } });
  const people = await tx.person.findMany({
    where: { id: { in: rows.flatMap(({ recordedById }) => recordedById ?? []) } },
    select: { id: true, name: true },
  });
  return rows.map((row) => ({
    ...readEntry(row),
    documentId: row.documentId,
    recordedBy: people.find(({ id }) => id === row.recordedById)?.name ?? "",
    recordedAt: row.recordedAt.toISOString(),
  }));
};

/** What its logbook comes to: may it be used, what is to be done, its checks charted, and what stands on it in doubt. */
export const equipmentServiceView = (actor: Actor, id: string, today: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const equipment = found(await loadEquipment(tx, id));
    const entries = await loadEntries(tx, equipment.id);
    const accepted = (await loadCalibrationsOf(tx, equipment.id)).filter(
      ({ acceptance }) => acceptance === "accepted",
    );
    const inForce = calibrationInForce(accepted.toReversed(), today);
    const standing = serviceStanding(equipment, entries, inForce?.performedOn ?? null);
    const { policy } = await loadServicePolicy(tx);
    const isInDoubt = equipment.state === "suspect" || equipment.state === "under-repair";
    const since = lastGoodEvidence(
      entries,
      accepted.map(({ performedOn }) => performedOn),
    );
    const verified = isVerified(entries);
    const gaps = recordGaps(equipment);
    return {
      entries: entries.toReversed(),
      charts: checkCharts(entries),
      findings: serviceFindings({ ...equipment, standing }, policy, today),
      gaps,
      verified,
      checkDueOn: dueDay(standing.check, standing.since),
      maintenanceDueOn: dueDay(standing.maintenance, standing.since),
      /** Only steps that would be taken; `verified` is reached by writing a verification. */
      nextStates: transitions[equipment.state].filter(
        (to) =>
          to !== "verified" &&
          decideTransition(equipment.state, to, verified).ok &&
          !(to === "in-service" && gaps.length > 0),
      ),
      doubt: isInDoubt ? { since, runs: await loadRunsOn(tx, equipment.id, since) } : null,
      mayWrite: actor.kind !== "system" && may(actor.roles, "equipment.record"),
    };
  });

export type EquipmentServiceView = Awaited<ReturnType<typeof equipmentServiceView>>;
