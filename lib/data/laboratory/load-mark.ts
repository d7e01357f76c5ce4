import type { CertificateContent } from "@/lib/domain/certificate/content";
import { hex } from "../hex";
import type { Tx } from "../in-scope";

const mediaTypes = ["image/png", "image/jpeg"] as const;

/** The laboratory's accreditation mark, by its hash; null where it has none. */
export const loadMark = async (tx: Tx, documentId: string | null) => {
  if (documentId === null) return null;
  const { sha256, mediaType } = await tx.evidenceDocument.findUniqueOrThrow({
    where: { id: documentId },
    select: { sha256: true, mediaType: true },
  });
  const known = mediaTypes.find((one) => one === mediaType);
  if (!known) throw new Error(`The accreditation mark is kept as ${mediaType}, which is no image`);
  return { sha256: hex(sha256), mediaType: known };
};

/** The image that a certificate names, whatever the laboratory's mark is by now. */
export const loadMarkBytes = async (
  tx: Tx,
  { laboratory }: CertificateContent,
): Promise<Uint8Array | undefined> => {
  const mark = laboratory.accreditationMark;
  if (!mark) return undefined;
  const document = await tx.evidenceDocument.findUniqueOrThrow({
    where: { sha256: Uint8Array.from(Buffer.from(mark.sha256, "hex")) },
    select: { bytes: true },
  });
  return document.bytes;
};
