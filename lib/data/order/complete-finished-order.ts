import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { orderEvents } from "@/lib/domain/order/events";
import { isOrderFinished } from "@/lib/domain/order/transitions";
import type { Tx } from "../in-scope";
import { freeHours } from "../promise/free-hours";
import { loadOrderForUpdate } from "./load-order";
import { setOrderState } from "./set-order-state";

/**
 * To be called after sensors were issued or handed back: completes the order when that was the last thing it waited
 * for, and gives back furnace hours it still has. Answers the event to return with one's own, or none.
 */
export const completeFinishedOrder = async (tx: Tx, orderNumber: string): Promise<readonly AuditEvent[]> => {
  const order = await loadOrderForUpdate(tx, orderNumber);
  if (order?.state !== "accepted") return [];
  const ordered = order.lines.reduce((sum, line) => sum + line.quantity, 0);
  const sensors = order.lines.flatMap((line) => line.sensors);
  if (!isOrderFinished(ordered, sensors)) return [];
  await setOrderState(tx, order, "completed");
  await freeHours(tx, order.id);
  return [eventOf(orderEvents.completed, order.id, { number: order.number, sensors: sensors.length })];
};
