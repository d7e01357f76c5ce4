import { decideDifferencesSettled } from "@/lib/domain/order/difference";
import { demand } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";
import { ordersInLoad } from "./change-store";
import { loadDifferences } from "./difference-store";

/** The refusal to begin while a difference is open with the customer of an order in the run's load (7.1.4). */
export const demandSettled = async (tx: Tx, run: { readonly id: string; readonly number: string }) => {
  for (const [orderId, orderNumber] of await ordersInLoad(tx, run.id))
    demand(
      decideDifferencesSettled(await loadDifferences(tx, orderId), `start run ${run.number}`, orderNumber),
    );
};
