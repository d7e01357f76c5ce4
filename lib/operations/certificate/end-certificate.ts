import { doubtInHouse } from "@/lib/data/amendment/doubt-in-house";
import type { CertificateRow } from "@/lib/data/amendment/load-measured";
import type { Tx } from "@/lib/data/in-scope";
import { sha256Hex } from "@/lib/data/sha256-hex";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { certificateEvents } from "@/lib/domain/certificate/events";

type Ending = {
  readonly kind: "amended" | "replaced" | "withdrawn";
  readonly reason: string;
  readonly successor: { readonly id: string; readonly number: string } | null;
  readonly decidedById: string;
  readonly decidedAt: Date;
};

const eventOfEnding = ({ id, number }: CertificateRow, ending: Ending): AuditEvent => {
  const { kind, successor, reason, decidedAt } = ending;
  const grounds = { decidedAt: decidedAt.toISOString(), reasonSha256: sha256Hex(reason) };
  return kind === "withdrawn"
    ? eventOf(certificateEvents.withdrawn, id, { number, ...grounds })
    : eventOf(certificateEvents[kind], id, { number, successor: successor?.number ?? "", ...grounds });
};

/**
 * A certificate no longer stands as it is. Where its results were adopted for a standard of the laboratory's own, that
 * standard is in doubt, and what stands on it is listed.
 */
export const endCertificate = async (
  tx: Tx,
  certificate: CertificateRow,
  ending: Ending,
): Promise<readonly AuditEvent[]> => {
  const { kind, reason, successor, decidedById, decidedAt } = ending;
  await tx.certificateEnding.create({
    data: {
      certificateId: certificate.id,
      customerId: certificate.customerId,
      ...{ kind, reason, successorId: successor?.id ?? null, decidedById, decidedAt },
    },
  });
  const doubts =
    kind === "amended"
      ? []
      : await doubtInHouse(
          tx,
          certificate.id,
          `Its certificate ${certificate.number} is ${kind}: ${reason}`,
          { openedById: decidedById, openedAt: decidedAt },
        );
  return [eventOfEnding(certificate, ending), ...doubts];
};
