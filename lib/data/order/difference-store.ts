import type { Tx } from "../in-scope";

/** Differences of an order, the first one first, each with how it was settled. */
export const loadDifferences = async (tx: Tx, orderId: string) => {
  const rows = await tx.orderDifference.findMany({
    where: { orderId },
    orderBy: [{ raisedAt: "asc" }, { id: "asc" }],
  });
  const settlements = await tx.orderDifferenceSettlement.findMany({
    where: { differenceId: { in: rows.map(({ id }) => id) } },
  });
  return rows.map((row) => {
    const settlement = settlements.find(({ differenceId }) => differenceId === row.id) ?? null;
    return { ...row, settlement, isSettled: settlement !== null };
  });
};

export const insertDifference = (
  tx: Tx,
  data: {
    readonly orderId: string;
    readonly customerId: string;
    readonly text: string;
    readonly raisedById: string;
    readonly raisedAt: Date;
  },
) => tx.orderDifference.create({ data, select: { id: true } });

export const insertSettlement = async (
  tx: Tx,
  data: {
    readonly differenceId: string;
    readonly customerId: string;
    readonly text: string;
    readonly agreedWith: string;
    readonly settledById: string;
    readonly settledAt: Date;
  },
): Promise<void> => {
  await tx.orderDifferenceSettlement.create({ data });
};
