import { keepDocument } from "@/lib/data/evidence/keep-document";
import type { Tx } from "@/lib/data/in-scope";
import { documentType } from "@/lib/domain/calibration/document-type";
import type { CalibrationInput } from "@/lib/domain/calibration/schema";
import type { Equipment } from "@/lib/domain/equipment/types";
import { Refused } from "@/lib/domain/refusal";
import { confirmDigital, type Kept } from "./confirm-digital";

type Given = {
  readonly equipment: Equipment;
  readonly input: CalibrationInput;
  readonly receivedById: string;
  readonly receivedAt: Date;
};

/** The file that comes with a certificate, by its hash; of a digital one also where the person confirmed other values. */
export const keepCertificate = async (
  tx: Tx,
  { equipment, input, receivedById, receivedAt }: Given,
): Promise<Kept> => {
  const { document } = input;
  if (!document) return { documentId: null, differences: [], events: [] };
  if (document.kind === "digital") return confirmDigital(tx, equipment, input, document);
  const mediaType = documentType(document.bytes);
  if (!mediaType)
    throw new Refused({
      code: "invalid",
      message: "Nothing was stored; what you typed is still here.",
      fields: {
        document: "This is no PDF, no image (PNG or JPEG) and no XML: choose the certificate’s file.",
      },
    });
  const { bytes, fileName } = document;
  const documentId = await keepDocument(tx, { bytes, fileName, mediaType, receivedById, receivedAt });
  return { documentId, differences: [], events: [] };
};
