import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import { loadDocument } from "@/lib/data/evidence/load-document";
import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { loadProviders } from "@/lib/data/provider/provider-store";
import { dccParents, dccSays } from "@/lib/domain/calibration/dcc-says";
import type { Equipment } from "@/lib/domain/equipment/types";
import type { Actor } from "@/lib/domain/staff/actor";
import { readKeptDcc } from "@/lib/files/dcc/read-kept-dcc";
import { answer, found } from "./view";

type Asked = {
  /** A digital certificate that was read in before, and which of its tables. */
  readonly document: string | null;
  readonly offer: number;
  readonly schemaFolder: string | null;
};

const digitalOf = async (tx: Tx, equipment: Equipment, { document, offer, schemaFolder }: Asked) => {
  if (document === null) return null;
  const kept = found(await loadDocument(tx, document));
  const { certificate, proposals } = found(readKeptDcc(kept.bytes, equipment, schemaFolder));
  const chosen = proposals.offers[offer] ?? null;
  return {
    documentId: kept.id,
    fileName: kept.fileName,
    sha256: hex(kept.sha256),
    offer,
    offers: proposals.offers.map(({ title }) => title),
    says: dccSays(certificate, chosen),
    parents: dccParents(certificate),
    remarks: chosen?.remarks ?? [],
    reasons: proposals.offers.length === 0 ? proposals.reasons : [],
    setAside: certificate.setAside,
    accreditationHints: certificate.accreditationHints,
    isCheckedBySchema: certificate.isCheckedBySchema,
    schemaVersion: certificate.schemaVersion,
    hasSignature:
      certificate.signatures.xmlSignatures.length > 0 || certificate.signatures.isSignatureDeclared,
  };
};

/** What the form of a certificate needs: the thing, who may have issued it, and what a digital one says beside each field. */
export const calibrationFormView = (actor: Actor, equipmentId: string, asked: Asked) =>
  answer(actor, "calibration.record", async (tx) => {
    const equipment = found(await loadEquipment(tx, equipmentId));
    const laboratory = await tx.laboratory.findFirst({ select: { name: true } });
    return {
      equipment,
      providers: await loadProviders(tx),
      laboratory: laboratory?.name ?? "",
      digital: await digitalOf(tx, equipment, asked),
    };
  });

export type CalibrationFormView = Awaited<ReturnType<typeof calibrationFormView>>;
export type DigitalView = NonNullable<CalibrationFormView["digital"]>;
