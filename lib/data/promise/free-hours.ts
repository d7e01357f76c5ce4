import type { Tx } from "@/lib/data/in-scope";

/** Gives back the furnace hours of this order, which is locked and at its end: nobody takes hours for it any more. */
export const freeHours = async (tx: Tx, orderId: string): Promise<void> => {
  await tx.furnaceSlot.updateMany({
    where: { orderId, isReleased: false },
    data: { isReleased: true, version: { increment: 1 } },
  });
};
