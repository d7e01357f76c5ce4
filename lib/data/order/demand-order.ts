import type { Order } from "@/lib/domain/order/types";
import { Refused } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";
import { loadOrderForUpdate } from "./load-order";

/** The order of this number, locked, or the refusal a form shows. */
export const demandOrder = async (tx: Tx, number: string): Promise<Order> => {
  const order = await loadOrderForUpdate(tx, number);
  if (!order)
    throw new Refused({ code: "not-found", message: "This order is not here. Nothing was changed." });
  return order;
};
