import type { Tx } from "@/lib/data/in-scope";
import { firstSensors } from "@/lib/data/sql/first-sensors";
import { oldestOrders, type WaitingOrderRow } from "@/lib/data/sql/oldest-orders";
import { orderCount } from "@/lib/data/sql/order-count";
import { sensorCount } from "@/lib/data/sql/sensor-count";
import type { OrderQuery } from "@/lib/domain/order/list-query";
import { type HandBack, handBackLabels } from "@/lib/domain/sensor/hand-back";
import { todayShown, type Waiting } from "./waiting";

const word = (count: number, one: string): string => `${count} ${one}${count === 1 ? "" : "s"}`;

/** Orders by the same conditions as the list that the heading leads to, the oldest first. */
const orders =
  (query: OrderQuery, say: (row: WaitingOrderRow) => string) =>
  async (tx: Tx, today: string): Promise<Waiting> => {
    const asked = { query, today, atRisk: [] };
    return {
      count: await orderCount(tx, asked),
      items: (await oldestOrders(tx, asked, todayShown)).map((row) => ({
        key: row.number,
        label: row.number,
        detail: `${row.customer}, ${say(row)}`,
        href: `/orders/${row.number}`,
      })),
    };
  };

const ordered = (row: WaitingOrderRow): string => word(row.ordered, "sensor");
const promised = (row: WaitingOrderRow): string =>
  row.promisedOn === null ? "no day promised" : `promised for ${row.promisedOn}`;

export const ordersRequested = orders({ show: "requested" }, ordered);
export const ordersToAccept = orders({ show: "recorded" }, ordered);
/** Accepted orders of which sensors are still to come. */
export const ordersToReceive = orders(
  { only: "expected" },
  (row) => `${word(row.ordered - row.here, "sensor")} to come`,
);
export const ordersWaiting = orders({ only: "waiting" }, promised);
/** The customer said no: nobody works on it before somebody has spoken with them. */
export const ordersDeclined = orders({ only: "declined" }, ordered);
export const ordersHeld = orders({ only: "held" }, promised);
export const ordersLate = orders({ only: "late" }, promised);

const whyOf = (why: string): string =>
  why === "certified" ? "" : `; ${handBackLabels[why as HandBack].toLowerCase()}`;

export const sensorsToHandBack = async (tx: Tx, today: string): Promise<Waiting> => ({
  count: await sensorCount(tx, { query: { only: "hand-back" }, today }),
  items: (await firstSensors(tx, { query: { only: "hand-back" }, today }, todayShown)).map((sensor) => ({
    key: sensor.id,
    label: sensor.tag,
    detail: `type ${sensor.typeLetter}, ${sensor.serial}, ${sensor.customer}, order ${sensor.order}${whyOf(sensor.why)}`,
    href: `/sensors/${sensor.tag}`,
  })),
});
