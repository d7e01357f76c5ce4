import { loadCalibration } from "@/lib/data/calibration/calibration-store";
import { loadCertificateFacts } from "@/lib/data/calibration/load-certificate-facts";
import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { assessCalibration } from "@/lib/domain/calibration/assess-calibration";
import type { Difference } from "@/lib/domain/calibration/differences";
import { isoDay } from "@/lib/domain/calibration/due";
import { storedChecks } from "@/lib/domain/calibration/stored-checks";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

const namesOf = async (tx: Tx, ids: readonly (string | null)[]): Promise<ReadonlyMap<string, string>> => {
  const people = await tx.person.findMany({
    where: { id: { in: ids.flatMap((id) => id ?? []) } },
    select: { id: true, name: true },
  });
  return new Map(people.map(({ id, name }) => [id, name]));
};

const documentOf = (tx: Tx, id: string | null) =>
  id === null
    ? null
    : tx.evidenceDocument.findUnique({
        where: { id },
        select: { id: true, fileName: true, mediaType: true, sha256: true, receivedAt: true },
      });

/** One certificate with its file, what it stands on, who decided what on it, and the questions of acceptance. */
export const calibrationView = (actor: Actor, equipmentId: string, id: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const equipment = found(await loadEquipment(tx, equipmentId));
    const { calibration, decisions, parents, row } = found(await loadCalibration(tx, id));
    found(calibration.equipmentId === equipment.id || null);
    const names = await namesOf(tx, [row.recordedById, ...decisions.map(({ decidedById }) => decidedById)]);
    const document = await documentOf(tx, row.documentId);
    const own = row.inHouseCertificateId
      ? await tx.certificate.findUnique({
          where: { id: row.inHouseCertificateId },
          select: { number: true, token: true },
        })
      : null;
    const isOwn = actor.kind !== "system" && row.recordedById === actor.personId;
    return {
      equipment,
      calibration,
      parents: parents.map((parent) => ({
        ...parent,
        performedOn: parent.performedOn && isoDay(parent.performedOn),
        validUntil: parent.validUntil && isoDay(parent.validUntil),
      })),
      document: document && { ...document, sha256: hex(document.sha256) },
      ownCertificate: own,
      differences: JSON.parse(row.differences) as readonly Difference[],
      recordedBy: names.get(row.recordedById ?? "") ?? "",
      decisions: decisions.map((decision) => ({
        decision: decision.decision as "accepted" | "rejected",
        reason: decision.reason,
        by: names.get(decision.decidedById ?? "") ?? "",
        at: decision.decidedAt,
        checks: storedChecks(decision.checks),
      })),
      checks: assessCalibration(await loadCertificateFacts(tx, calibration, parents.length)),
      mayDecide:
        actor.kind !== "system" &&
        may(actor.roles, "calibration.accept") &&
        calibration.acceptance !== "rejected",
      isOwn,
    };
  });

export type CalibrationView = Awaited<ReturnType<typeof calibrationView>>;
