import { loadFurnaceBoard } from "@/lib/data/board/load-furnaces";
import { loadOutlooks, type PromisedOrder } from "@/lib/data/board/load-outlooks";
import type { Tx } from "@/lib/data/in-scope";
import { loadPromisePolicy } from "@/lib/data/promise/policy-store";
import { orderCount } from "@/lib/data/sql/order-count";
import { stateCounts } from "@/lib/data/sql/state-counts";
import { isoDay } from "@/lib/domain/calibration/due";
import type { OrderQuery } from "@/lib/domain/order/list-query";
import { dayAfter, weekOf } from "@/lib/domain/order/working-days";
import { sensorStates } from "@/lib/domain/sensor/transitions";
import type { Actor } from "@/lib/domain/staff/actor";
import { furnaceRows } from "./board/furnace-rows";
import { answer } from "./view";

export type BoardNumber = {
  readonly key: string;
  readonly label: string;
  readonly count: number;
  /** The list of just these. */
  readonly href: string;
  /** What is worth a look where it is not nothing. */
  readonly tone?: "watch" | "bad";
};

const furnaceDays = 10;
const shown = 15;

/** Numbers of orders, each counted by the conditions of the list it leads to. */
const orderNumbers = async (tx: Tx, today: string, outlooks: readonly PromisedOrder[]) => {
  const sunday = weekOf(today).to;
  const count = (query: OrderQuery) => orderCount(tx, { query, today, atRisk: [] });
  const kinds = (kind: string) => outlooks.filter(({ outlook }) => outlook.kind === kind).length;
  return {
    promised: {
      key: "promised",
      label: "Promised by Sunday",
      count: await count({ show: "accepted", due: sunday }),
      href: `/orders?show=accepted&due=${sunday}`,
    },
    expected: {
      key: "expected",
      label: "Orders to take in",
      count: await count({ only: "expected" }),
      href: "/orders?only=expected",
    },
    late: { key: "late", label: "Late", count: kinds("late"), href: "/orders?only=late", tone: "bad" },
    risk: { key: "risk", label: "At risk", count: kinds("risk"), href: "/orders?only=risk", tone: "watch" },
    waiting: {
      key: "waiting",
      label: "Waiting for customer",
      count: await count({ only: "waiting" }),
      href: "/orders?only=waiting",
    },
    held: {
      key: "held",
      label: "On hold",
      count: await count({ only: "held" }),
      href: "/orders?only=held",
      tone: "watch",
    },
    send: {
      key: "send",
      label: "Orders with something to send",
      count: await count({ only: "send" }),
      href: "/orders?only=send",
    },
  } as const satisfies Readonly<Record<string, BoardNumber>>;
};

/** As the list that the number leads to: all that have not been handed back. */
const inTheHouse = sensorStates.filter((state) => state !== "collected");

/** The week of the laboratory: promised, here, hot, late and at risk, to be sent, waiting for the customer. */
export const boardView = (actor: Actor, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const today = isoDay(now);
    const outlooks = await loadOutlooks(tx, now);
    const orders = await orderNumbers(tx, today, outlooks);
    const sensors = await stateCounts(tx, "sensor", inTheHouse);
    const runs = await stateCounts(tx, "run", ["submitted"]);
    const from = new Date(`${today}T00:00:00Z`);
    const until = new Date(`${dayAfter(today, furnaceDays)}T00:00:00Z`);
    const { policy } = await loadPromisePolicy(tx);
    const furnaces = furnaceRows(await loadFurnaceBoard(tx, from, now, policy), { from, now, until });
    const here: BoardNumber = {
      key: "here",
      label: "Sensors here",
      count: inTheHouse.reduce((sum, state) => sum + (sensors.get(state) ?? 0), 0),
      href: "/sensors",
    };
    const hot: BoardNumber = {
      key: "hot",
      label: "Furnaces hot",
      // As the table below says of each: a characterisation is hot as well as a run.
      count: furnaces.filter((furnace) => furnace.hot !== null).length,
      href: "#furnaces",
    };
    const review: BoardNumber = {
      key: "review",
      label: "Runs to review",
      count: runs.get("submitted") ?? 0,
      href: "/runs?show=submitted",
    };
    const numbers: readonly BoardNumber[] = [
      orders.promised,
      orders.late,
      orders.risk,
      here,
      hot,
      review,
      orders.send,
      orders.expected,
      orders.waiting,
      orders.held,
    ];
    const doubtful = outlooks.filter(({ outlook }) => outlook.kind !== "fine");
    return {
      today,
      now: now.toISOString(),
      from: from.toISOString(),
      until: until.toISOString(),
      numbers,
      doubtful: doubtful.slice(0, shown),
      doubtfulMore: Math.max(0, doubtful.length - shown),
      furnaces,
    };
  });

export type BoardView = Awaited<ReturnType<typeof boardView>>;
