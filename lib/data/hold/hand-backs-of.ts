import type { Order } from "@/lib/domain/order/types";
import { type HandBack, handBackOf } from "@/lib/domain/sensor/hand-back";
import { awayOf } from "../custody/away-of";
import type { Tx } from "../in-scope";
import { holdsOf } from "./holds-of";

/** Which sensors of an order are to be handed back now, by their ids, and why. */
export const handBacksOf = async (
  tx: Tx,
  order: Pick<Order, "state" | "lines">,
): Promise<ReadonlyMap<string, HandBack>> => {
  const sensors = order.lines.flatMap((line) => line.sensors);
  const ids = sensors.map(({ id }) => id);
  const holds = await holdsOf(tx, ids);
  const away = await awayOf(tx, ids);
  return new Map(
    sensors.flatMap(({ id, state }) => {
      const own = holds.filter(({ sensorId }) => sensorId === id);
      const why = handBackOf({ state, orderState: order.state, isAway: away.has(id), holds: own });
      return why === null ? [] : [[id, why]];
    }),
  );
};
