import { loadOrder } from "@/lib/data/order/load-order";
import { loadReturnAddress } from "@/lib/data/order/return-address";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "../view";

/** Where the sensors of an order go back to. */
export const orderReturnAddressView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) =>
    loadReturnAddress(tx, found(await loadOrder(tx, number)).id),
  );

export type OrderReturnAddress = Awaited<ReturnType<typeof orderReturnAddressView>>;
