import type { SensorState } from "../sensor/transitions";
import type { OrderState } from "./transitions";

/** An order's way as its customer sees it: five steps in plain words, and what comes next. */
export type ProgressStep = {
  readonly label: string;
  readonly state: "done" | "now" | "next" | "stopped";
};
export type OrderProgress = { readonly steps: readonly ProgressStep[]; readonly next: string };

const reached = {
  received: 1,
  loaded: 1,
  measured: 1,
  evaluated: 2,
  "in-review": 2,
  issued: 3,
  collected: 4,
} as const satisfies Readonly<Record<SensorState, number>>;

const labels = ["Ordered", "Received", "Measured", "Checked and certified", "Handed back"] as const;

/** What is awaited when the step of that index is the one it stands at. */
const awaited = [
  "We look at your order and confirm it.",
  "Send or bring your sensors, with the order number.",
  "We measure your sensors.",
  "A second person checks the results and signs the certificates.",
  "Collect your sensors, or wait for their delivery. The certificates are here already.",
] as const;

/** The slowest sensor decides how far the order is. */
export const orderProgress = (
  orderState: OrderState,
  quantity: number,
  sensorStates: readonly SensorState[],
): OrderProgress => {
  const all = sensorStates.length >= quantity;
  const slowest = all ? Math.min(...sensorStates.map((state) => reached[state])) : 0;
  const accepted = orderState === "accepted" || orderState === "completed";
  const done = accepted ? slowest + 1 : 0;
  const cancelled = orderState === "cancelled";
  return {
    steps: labels.map((word, index) => {
      const label = index === 0 && orderState === "requested" ? "Asked for" : word;
      if (index < done) return { label, state: "done" };
      if (index > done) return { label, state: "next" };
      return { label, state: cancelled ? "stopped" : "now" };
    }),
    next: cancelled ? "This order was cancelled." : (awaited[done] ?? "Everything is done. Thank you."),
  };
};

/** Where one sensor is, said to its owner. */
export const plainSensorStates: Readonly<Record<SensorState, string>> = {
  received: "Here, waiting for its place in the furnace",
  loaded: "Being measured",
  measured: "Being measured",
  evaluated: "Measured, results being prepared",
  "in-review": "Results being checked by a second person",
  issued: "Certificate ready",
  collected: "Handed back",
};
