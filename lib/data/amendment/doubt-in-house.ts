import type { AuditEvent } from "@/lib/domain/audit/define-event";
import type { Tx } from "../in-scope";
import { openSuspect } from "../nonconformity/open-suspect";

/** ISO/IEC 17025 6.4.9: working standards that were calibrated by a certificate of ours which stands no longer. */
export const doubtInHouse = async (
  tx: Tx,
  certificateId: string,
  reason: string,
  by: { readonly openedById: string; readonly openedAt: Date },
): Promise<readonly AuditEvent[]> => {
  const calibrations = await tx.calibration.findMany({
    where: { inHouseCertificateId: certificateId },
    select: { equipment: { select: { id: true, tag: true } } },
  });
  const events: AuditEvent[] = [];
  for (const { equipment } of calibrations) events.push(...(await openSuspect(tx, equipment, reason, by)));
  return events;
};
