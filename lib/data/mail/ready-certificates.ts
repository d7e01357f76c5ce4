import type { AuditEvent } from "@/lib/domain/audit/define-event";
import { countReady, type Happened, type SignedTogether } from "@/lib/domain/mail/count-ready";
import type { Tx } from "../in-scope";
import { certificateEndings } from "../sql/certificate-endings";
import { lockName } from "../sql/lock-name";

const happenedBy: Readonly<Record<string, Happened>> = {
  "certificate.issued": "issued",
  "certificate.attempt-failed": "attempt-failed",
  "certificate.withdrawn": "withdrawn",
};

/** The certificates of its order that were signed by the same act, itself among them. */
const signedTogether = async (tx: Tx, id: string): Promise<readonly string[]> => {
  const own = await tx.signature.findUnique({ where: { certificateId: id }, select: { actId: true } });
  if (!own) return [id];
  // Two that are made at the same time look one after the other: the second sees the first's file.
  await lockName(tx, `signing-act ${own.actId}`);
  const signed = await tx.signature.findMany({
    where: { actId: own.actId },
    select: { certificateId: true },
  });
  const { orderId } = await tx.certificate.findUniqueOrThrow({ where: { id }, select: { orderId: true } });
  const certificates = await tx.certificate.findMany({
    where: { id: { in: signed.map(({ certificateId }) => certificateId) }, orderId },
    select: { id: true },
  });
  return certificates.map((one) => one.id);
};

const load = async (tx: Tx, ids: readonly string[]): Promise<ReadonlyMap<string, SignedTogether>> => {
  const failed = await tx.certificateAttempt.groupBy({
    by: ["certificateId"],
    where: { certificateId: { in: [...ids] } },
    _count: true,
  });
  const failures = new Map(failed.map(({ certificateId, _count }) => [certificateId, _count]));
  const rows = await certificateEndings(tx, ids);
  return new Map(
    rows.map(({ hasFile, id, kind }) => [
      id,
      { hasFile, hasEnded: kind !== null, failures: failures.get(id) ?? 0 },
    ]),
  );
};

/** Of how many certificates the customer is told now that they are ready; what follows an earlier one is told by its ending. */
export const readyCertificates = async (tx: Tx, { action, entityId }: AuditEvent): Promise<number> => {
  const happened = happenedBy[action];
  if (!happened || (await tx.certificateEnding.count({ where: { successorId: entityId } })) > 0) return 0;
  const all = await load(tx, await signedTogether(tx, entityId));
  const own = all.get(entityId);
  const others = [...all].flatMap(([id, one]) => (id === entityId ? [] : [one]));
  return own ? countReady(happened, own, others) : 0;
};
