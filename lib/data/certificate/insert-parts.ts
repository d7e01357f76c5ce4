import type { BundleMember } from "@/lib/domain/certificate/bundle";
import type { Tx } from "../in-scope";

/** What a certificate speaks of. One measurement of one sensor needs no rows: the certificate names it itself. */
export const insertParts = async (
  tx: Tx,
  certificateId: string,
  members: readonly BundleMember[],
): Promise<void> => {
  if (members.length < 2) return;
  await tx.certificatePart.createMany({
    data: members.map(({ kind, sensorId, customerId, runId, evaluationId }, index) => ({
      certificateId,
      customerId,
      position: index + 1,
      sensorId,
      runId,
      evaluationId,
      setKind: kind,
    })),
  });
};
