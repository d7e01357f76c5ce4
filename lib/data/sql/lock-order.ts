import type { Tx } from "../in-scope";

/** Locks an order until the transaction ends. Whoever locks its sensors too takes those first, as sign-off does. */
export const lockOrder = (tx: Tx, number: string): Promise<{ readonly id: string }[]> =>
  tx.$queryRaw<
    { id: string }[]
  >`select id::text as id from customer_order where number = ${number} for update`;
