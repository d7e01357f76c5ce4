import { lockCertificate } from "@/lib/data/amendment/amendment-store";
import { loadStanding } from "@/lib/data/certificate/standing";
import type { Tx } from "@/lib/data/in-scope";
import { lockRun } from "@/lib/data/sql/lock-run";
import { Refused } from "@/lib/domain/refusal";

/** The certificate with how it stands, and how often its making failed; locked, so that nobody else decides on it meanwhile. */
export const demandCertificate = async (tx: Tx, id: string) => {
  const certificate = await tx.certificate.findUnique({ where: { id } });
  if (!certificate) throw new Refused({ code: "not-found", message: "This certificate is not here." });
  await lockRun(tx, certificate.runId);
  await lockCertificate(tx, id);
  const failures = await tx.certificateAttempt.count({ where: { certificateId: id } });
  return { certificate, failures, standing: await loadStanding(tx, id) };
};
