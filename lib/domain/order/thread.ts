import { type SensorState, sensorStates } from "../sensor/transitions";
import { orderStateLabels } from "./labels";
import type { Apart } from "./sorted-by-way";
import type { OrderState } from "./transitions";

export type OrderBead = {
  readonly key: "ordered" | "accepted" | "cancelled" | SensorState;
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

const nothingApart: Apart = { forProvider: { quantity: 0, sensors: [] }, unmeasured: [] };

/** Taken in and handed back are all; issued is a certificate, ours or a provider's; between lies only what we measure. */
const countOf = (bead: SensorState, quantity: number, ours: readonly SensorState[], apart: Apart) => {
  const isDesk = bead === "received" || bead === "collected";
  const isTheirs = isDesk || bead === "issued";
  const { forProvider, unmeasured } = apart;
  const sensors = [...ours, ...(isTheirs ? forProvider.sensors : []), ...(isDesk ? unmeasured : [])];
  const without = (isDesk ? 0 : unmeasured.length) + (isTheirs ? 0 : forProvider.quantity);
  return { done: sensors.filter((sensor) => isPast(sensor, bead)).length, of: quantity - without };
};

const stepsOf = (
  state: OrderState,
  quantity: number,
  sensors: readonly SensorState[],
  apart: Apart,
): readonly Step[] => [
  { key: "ordered", label: "Ordered", done: 1, of: 1 },
  {
    key: "accepted",
    label: orderStateLabels.accepted,
    done: state === "accepted" || state === "completed" ? 1 : 0,
    of: 1,
  },
  ...sensorStates
    .map((bead) => ({
      ...{ key: bead, label: words[bead] },
      ...countOf(bead, Math.max(quantity, 1), sensors, apart),
    }))
    // A bead that no sensor of this order ever comes to is none of its beads.
    .filter(({ of }) => of > 0),
];

const numbered = (label: string, done: number, of: number): string =>
  done > 0 && done < of ? `${label} ${done} of ${of}` : label;

/** What came of it before it ended, that it ended, and what of it is still to be handed back. */
const cancelledThread = (quantity: number, sensors: readonly SensorState[]): readonly OrderBead[] => {
  const count = (bead: SensorState) => sensors.filter((sensor) => isPast(sensor, bead)).length;
  const [came, issued, collected] = [sensors.length, count("issued"), count("collected")];
  const cancelled = { key: "cancelled", label: orderStateLabels.cancelled, state: "stopped" } as const;
  const ordered = { key: "ordered", label: "Ordered", state: "done" } as const;
  if (came === 0) return [ordered, cancelled];
  const issuedBead = { key: "issued", label: numbered(words.issued, issued, came), state: "done" } as const;
  return [
    ordered,
    { key: "accepted", label: orderStateLabels.accepted, state: "done" },
    { key: "received", label: numbered(words.received, came, quantity), state: "done" },
    ...(issued > collected ? [issuedBead] : []),
    cancelled,
    {
      key: "collected",
      label: numbered(words.collected, collected, came),
      state: collected < came ? "now" : "done",
    },
  ];
};

/**
 * One order's life, told by how many of its sensors have passed each bead: "Received 3 of 5". `sensors` are those we
 * measure; `quantity` is of all.
 */
export const orderThread = (
  state: OrderState,
  quantity: number,
  sensors: readonly SensorState[],
  apart: Apart = nothingApart,
): readonly OrderBead[] => {
  if (state === "cancelled")
    return cancelledThread(quantity, [...sensors, ...apart.forProvider.sensors, ...apart.unmeasured]);
  const steps = stepsOf(state, quantity, sensors, apart);
  const now = steps.findIndex(({ done, of }) => done < of);
  return steps.map(({ key, label, done, of }, index) => ({
    key,
    label: numbered(label, done, of),
    state: done >= of ? "done" : index === now ? "now" : "next",
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
  /** So many are here with no certificate that stands; left out: none. */
  readonly withdrawn?: number;
  /** So many of what came are on hold and not measured yet; left out: none. */
  readonly onHold?: number;
  /** A question about the order or one of them waits for the customer's answer. */
  readonly isAsked?: boolean;
};

const heldText = (held: number, isAsked: boolean): string =>
  `${plural(held, "sensor")} on hold ${held === 1 ? "waits" : "wait"} ${
    isAsked ? "for the customer’s answer" : "until somebody settles why"
  }.`;

const handsBack = (count: number, withdrawn: number): string => {
  const all = `The front desk hands ${plural(count, "sensor")} back.`;
  if (withdrawn === 0) return all;
  const whose = count === 1 ? "Its certificate is" : `The certificate of ${withdrawn} of them is`;
  return `${all} ${whose} withdrawn: agree with the customer first.`;
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
    return here > 0 ? handsBack(here, aside.withdrawn ?? 0) : "This order was cancelled.";
  }
  if (state === "requested") return "The front desk takes the customer’s request over.";
  if (state === "recorded") return "The front desk reviews the order with the customer and accepts it.";
  const missing = quantity - (sensors.length - aside.replaced);
  if (missing > 0) return missingText(missing, aside);
  const { forProvider = 0, away = 0, onHold = 0, isAsked = false } = aside;
  const toLoad = count("received") - aside.toHandBack - forProvider - onHold;
  if (toLoad > 0) return `A technician loads ${plural(toLoad, "sensor")}.`;
  if (count("loaded", "measured") > 0) return "A technician measures and evaluates.";
  if (count("evaluated") > 0) return "A technician submits the run.";
  if (count("in-review") > 0) return "The signatory reviews the results.";
  if (forProvider > 0)
    return `An external provider measures ${plural(forProvider, "sensor")}; its certificates are recorded on their pages.`;
  if (onHold > 0) return heldText(onHold, isAsked);
  const waiting = count("issued") - away + aside.toHandBack;
  if (waiting === 0 && away > 0)
    return `${plural(away, "sensor")} to come back from an external provider; it is recorded on the sensor’s page.`;
  return waiting > 0 ? handsBack(waiting, aside.withdrawn ?? 0) : "Nothing is left to do here.";
};
