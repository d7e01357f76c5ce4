import type { Tx } from "../in-scope";

/** The number of the order that this one repeats; "" = none. */
export const repeatedNumber = async (tx: Tx, orderId: string): Promise<string> => {
  const { repeatsOrderId } = await tx.order.findUniqueOrThrow({
    where: { id: orderId },
    select: { repeatsOrderId: true },
  });
  if (!repeatsOrderId) return "";
  const { number } = await tx.order.findUniqueOrThrow({
    where: { id: repeatsOrderId },
    select: { number: true },
  });
  return number;
};
