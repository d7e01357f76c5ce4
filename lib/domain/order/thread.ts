import { type SensorState, sensorStates } from "../sensor/transitions";
import { orderStateLabels } from "./labels";
import type { OrderState } from "./transitions";

export type OrderBead = {
  readonly key: "ordered" | "accepted" | SensorState;
  readonly label: string;
  readonly state: "done" | "now" | "next" | "stopped";
};

const words: Readonly<Record<SensorState, string>> = {
  received: "Received",
  loaded: "Loaded",
  measured: "Measured",
  evaluated: "Evaluated",
  "in-review": "Reviewed",
  issued: "Issued",
  collected: "Collected",
};

type Step = {
  readonly key: OrderBead["key"];
  readonly label: string;
  readonly done: number;
  readonly of: number;
};

/** "In review" is a bead still at work: it is behind a sensor only once that is issued. */
const isPast = (state: SensorState, bead: SensorState): boolean => {
  const least = bead === "in-review" ? "issued" : bead;
  return sensorStates.indexOf(state) >= sensorStates.indexOf(least);
};

const stepsOf = (state: OrderState, quantity: number, sensors: readonly SensorState[]): readonly Step[] => [
  { key: "ordered", label: "Ordered", done: 1, of: 1 },
  {
    key: "accepted",
    label: orderStateLabels.accepted,
    done: state === "accepted" || state === "completed" ? 1 : 0,
    of: 1,
  },
  ...sensorStates.map((bead) => ({
    key: bead,
    label: words[bead],
    done: sensors.filter((sensor) => isPast(sensor, bead)).length,
    of: Math.max(quantity, 1),
  })),
];

/** One order's life, told by how many of its sensors have passed each bead: "Received 3 of 5". */
export const orderThread = (
  state: OrderState,
  quantity: number,
  sensors: readonly SensorState[],
): readonly OrderBead[] => {
  const steps = stepsOf(state, quantity, sensors);
  const now = steps.findIndex(({ done, of }) => done < of);
  return steps.map(({ key, label, done, of }, index) => ({
    key,
    label: done > 0 && done < of ? `${label} ${done} of ${of}` : label,
    state: done >= of ? "done" : index !== now ? "next" : state === "cancelled" ? "stopped" : "now",
  }));
};

const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? "" : "s"}`;

/** Sensors of the order that are not measured after all. */
export type Aside = {
  /** Others are awaited, or came, in the place of so many. */
  readonly replaced: number;
  /** So many lie here and are handed back unmeasured. */
  readonly toHandBack: number;
  /** So many an external provider measures, and its certificate does not count yet; left out: none. */
  readonly forProvider?: number;
  /** So many are finished, but by their custody logs still with the provider; left out: none. */
  readonly away?: number;
};

const missingText = (missing: number, { replaced }: Aside): string =>
  replaced === 0
    ? `The front desk takes ${plural(missing, "sensor")} in.`
    : `The front desk takes ${plural(missing, "sensor")} in: ${plural(Math.min(missing, replaced), "sensor")} in the place of what goes back or went back unmeasured.`;

/** What is next for the order, and whose turn it is. `quantity` and `sensors` are of all that came. */
export const nextOfOrder = (
  state: OrderState,
  quantity: number,
  sensors: readonly SensorState[],
  aside: Aside = { replaced: 0, toHandBack: 0 },
): string => {
  const count = (...states: SensorState[]) => sensors.filter((sensor) => states.includes(sensor)).length;
  if (state === "cancelled") {
    const here = sensors.length - count("collected");
    return here > 0 ? `The front desk hands ${plural(here, "sensor")} back.` : "This order was cancelled.";
  }
  if (state === "requested") return "The front desk takes the customer’s request over.";
  if (state === "recorded") return "The front desk reviews the order with the customer and accepts it.";
  const missing = quantity - (sensors.length - aside.replaced);
  if (missing > 0) return missingText(missing, aside);
  const { forProvider = 0, away = 0 } = aside;
  const toLoad = count("received") - aside.toHandBack - forProvider;
  if (toLoad > 0) return `A technician loads ${plural(toLoad, "sensor")}.`;
  if (count("loaded", "measured") > 0) return "A technician measures and evaluates.";
  if (count("evaluated") > 0) return "A technician submits the run.";
  if (count("in-review") > 0) return "The signatory reviews the results.";
  if (forProvider > 0)
    return `An external provider measures ${plural(forProvider, "sensor")}; its certificates are recorded on their pages.`;
  const waiting = count("issued") - away + aside.toHandBack;
  if (waiting === 0 && away > 0)
    return `${plural(away, "sensor")} to come back from an external provider; it is recorded on the sensor’s page.`;
  return waiting > 0
    ? `The front desk hands ${plural(waiting, "sensor")} back.`
    : "Nothing is left to do here.";
};
