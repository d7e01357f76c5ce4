import type { BundleMember } from "@/lib/domain/certificate/bundle";
import { asSetKind } from "@/lib/domain/parts/decide-set";
import { ok, type Result } from "@/lib/domain/refusal";
import { certificateParts } from "../certificate/certificate-parts";
import type { Tx } from "../in-scope";
import { loadReviewRun } from "../review/load-review-run";
import { namedBy } from "./sensors-on";

export type CertificateRow = NonNullable<Awaited<ReturnType<Tx["certificate"]["findUnique"]>>>;

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
