import { ok, type Result, refuse } from "../refusal";
import { isDone, type SensorState } from "../sensor/transitions";
import { countedSensors } from "./counted-sensors";

export const orderStates = ["requested", "recorded", "accepted", "completed", "cancelled"] as const;
export type OrderState = (typeof orderStates)[number];

const next = {
  requested: ["recorded", "cancelled"],
  recorded: ["accepted", "cancelled"],
  accepted: ["completed", "cancelled"],
  completed: [],
  cancelled: [],
} as const satisfies Readonly<Record<OrderState, readonly OrderState[]>>;

export const isOrderState = (value: string): value is OrderState =>
  (orderStates as readonly string[]).includes(value);

export const canOrderBecome = (from: OrderState, to: OrderState): boolean =>
  (next[from] as readonly OrderState[]).includes(to);

/** Lines and terms may change only until they are accepted: from then on they are the contract (7.1.6). */
export const decideAmendment = (state: OrderState): Result<"amend"> =>
  state === "recorded"
    ? ok("amend")
    : refuse(
        "wrong-state",
        state === "accepted"
          ? "This order is accepted: its lines are fixed. Change it with a reason and another review. Nothing was changed."
          : state === "requested"
            ? "This order is requested: take it over first. Nothing was changed."
            : `This order is ${state}: its lines are fixed. Record another order for what is to be added. Nothing was changed.`,
      );

/** What a customer requested is taken over once; from then on it is the desk's to amend. */
export const decideTakeOver = (state: OrderState): Result<"recorded"> =>
  state === "requested"
    ? ok("recorded")
    : refuse("wrong-state", `This order is ${state}: it has been taken over already. Nothing was changed.`);

/**
 * An order is complete when each sensor ordered is here and has its certificate, or was handed back without one; one that
 * another is awaited for takes nobody's place.
 */
export const isOrderFinished = (
  quantityOrdered: number,
  sensors: readonly { readonly state: SensorState; readonly isReplaced?: boolean }[],
): boolean =>
  countedSensors(sensors).length >= quantityOrdered && sensors.every(({ state }) => isDone(state));

/** Work already begun is not thrown away by a click: sensors past the shelf must first come back or be finished. */
export const decideCancellation = (
  state: OrderState,
  sensors: readonly { readonly tag: string; readonly state: SensorState }[],
): Result<"cancelled"> => {
  if (!canOrderBecome(state, "cancelled"))
    return refuse("wrong-state", `A ${state} order cannot be cancelled. Nothing was changed.`);
  const busy = sensors.filter((sensor) => sensor.state !== "received" && sensor.state !== "collected");
  if (busy.length > 0)
    return refuse(
      "wrong-state",
      `Work has begun on ${busy.map((sensor) => sensor.tag).join(", ")}. Finish it or take the sensors out of their run, then cancel.`,
    );
  return ok("cancelled");
};
