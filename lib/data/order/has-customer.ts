import type { Tx } from "../in-scope";

export const hasCustomer = async (tx: Tx, customerId: string): Promise<boolean> =>
  (await tx.customer.count({ where: { id: customerId } })) === 1;
