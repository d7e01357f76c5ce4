import type { Tx } from "../in-scope";

export const insertRollAgreement = async (
  tx: Tx,
  data: {
    readonly orderId: string;
    readonly customerId: string;
    readonly lot: string;
    readonly roll: string;
    readonly agreedWith: string;
    readonly text: string;
    readonly recordedById: string;
    readonly recordedAt: Date;
  },
): Promise<void> => {
  await tx.rollAgreement.create({ data });
};
