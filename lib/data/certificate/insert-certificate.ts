import type { CertificateContent } from "@/lib/domain/certificate/content";
import { canonicalContent } from "@/lib/domain/certificate/content-hash";
import type { Tx } from "../in-scope";

/** Fixes content, hash and number. Nothing of it can be changed afterwards; the database sees to that. */
export const insertCertificate = async (
  tx: Tx,
  given: {
    readonly content: CertificateContent;
    readonly contentHash: Uint8Array;
    readonly token: string;
    readonly customerId: string;
    readonly orderId: string;
    readonly sensorId: string;
    readonly runId: string;
    readonly evaluationId: string;
    readonly signedById: string;
    readonly signedAt: Date;
  },
): Promise<string> => {
  const { content, contentHash, ...rest } = given;
  const row = await tx.certificate.create({
    data: {
      ...rest,
      number: content.number,
      content: canonicalContent(content),
      contentHash: Uint8Array.from(contentHash),
    },
    select: { id: true },
  });
  return row.id;
};
