import type { Tx } from "@/lib/data/in-scope";
import { demandSaved } from "@/lib/data/versioned";

export type LaboratoryFields = {
  readonly name: string;
  readonly addressLines: string;
  readonly contact: string;
  readonly accreditationText: string;
  readonly accreditationNumber: string;
  readonly countryCode: string;
  readonly performerMaySignOff: boolean;
};

export const loadLaboratory = (tx: Tx) => tx.laboratory.findUnique({ where: { id: "laboratory" } });

export const insertLaboratory = (tx: Tx, fields: LaboratoryFields & { readonly isDemo: boolean }) =>
  tx.laboratory.create({ data: { id: "laboratory", ...fields } });

/** Null: none. The image stays among the evidence. */
export const saveMark = async (tx: Tx, version: number, documentId: string | null): Promise<void> =>
  demandSaved(
    await tx.laboratory.updateMany({
      where: { id: "laboratory", version },
      data: { accreditationMarkId: documentId, version: { increment: 1 } },
    }),
  );

export const saveLaboratory = async (tx: Tx, version: number, fields: LaboratoryFields): Promise<void> =>
  demandSaved(
    await tx.laboratory.updateMany({
      where: { id: "laboratory", version },
      data: { ...fields, version: { increment: 1 } },
    }),
  );
