import type { BundleMember } from "@/lib/domain/certificate/bundle";
import { asSetKind } from "@/lib/domain/parts/decide-set";
import { ok, type Result } from "@/lib/domain/refusal";
import { certificateParts } from "../certificate/certificate-parts";
import type { Tx } from "../in-scope";
import { loadReviewRun } from "../review/load-review-run";

export type CertificateRow = NonNullable<Awaited<ReturnType<Tx["certificate"]["findUnique"]>>>;

/** The sensors, sets, runs and evaluations that a certificate names, in its order. */
const namedBy = async (tx: Tx, certificate: CertificateRow) => {
  const parts = await tx.certificatePart.findMany({
    where: { certificateId: certificate.id },
    orderBy: { position: "asc" },
  });
  return parts.length > 0 ? parts : [{ ...certificate, setKind: "as-received" }];
};

/** The sensors on it, the one it is filed under first. */
export const sensorsOn = async (tx: Tx, certificate: CertificateRow): Promise<readonly string[]> => [
  ...new Set([certificate.sensorId, ...(await namedBy(tx, certificate)).map(({ sensorId }) => sensorId)]),
];

/** What a certificate was composed from, by the evaluations that it names: for whose signature it takes. */
export const loadMeasured = async (
  tx: Tx,
  certificate: CertificateRow,
): Promise<Result<readonly BundleMember[]>> => {
  const members: BundleMember[] = [];
  for (const { sensorId, customerId, runId, evaluationId, setKind } of await namedBy(tx, certificate)) {
    const review = await loadReviewRun(tx, runId, evaluationId);
    if (!review) throw new Error(`the run of certificate ${certificate.number} is not there`);
    const parts = certificateParts(review, sensorId);
    if (!parts.ok) return parts;
    const kind = asSetKind(setKind);
    members.push({ kind, parts: parts.value, sensorId, customerId, runId, evaluationId });
  }
  return ok(members);
};
