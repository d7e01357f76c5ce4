import type { Order } from "@/lib/domain/order/types";
import { replacedSensors } from "../hold/replaced-sensors";
import type { Tx } from "../in-scope";
import { lockOrder } from "../sql/lock-order";
import { orderOf, orderParts } from "./order-of";

export const loadOrder = async (tx: Tx, number: string): Promise<Order | null> => {
  const row = await tx.order.findUnique({ where: { number }, include: orderParts });
  return row && orderOf(row, await replacedSensors(tx, [row.id]));
};

/** The order and its sensors as they are now, the order locked until the transaction ends. */
export const loadOrderForUpdate = async (tx: Tx, number: string): Promise<Order | null> => {
  const [locked] = await lockOrder(tx, number);
  return locked ? loadOrder(tx, number) : null;
};
