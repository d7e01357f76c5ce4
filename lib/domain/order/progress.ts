import type { SensorState } from "../sensor/transitions";
import type { OrderState } from "./transitions";

/** An order's way as its customer sees it: five steps in plain words, and what comes next. */
export type ProgressStep = {
  readonly label: string;
  readonly state: "done" | "now" | "next" | "stopped";
};
export type OrderProgress = { readonly steps: readonly ProgressStep[]; readonly next: string };

/** Sensors with which the work does not go on; left out: none. All but `replaced` and `replacedHere` count towards the order. */
export type ProgressAside = {
  /** They stand still until something is settled. */
  readonly held?: number;
  /** They are here and go back unmeasured. */
  readonly goingBack?: number;
  /** They went back unmeasured. */
  readonly goneUnmeasured?: number;
  /** Another is awaited, or came, in the place of so many; and so many of these are still here. */
  readonly replaced?: number;
  readonly replacedHere?: number;
  /** The serial numbers of the replaced, where they may be named. */
  readonly replacedSerials?: readonly string[];
  /** A question waits for the customer's answer. */
  readonly isAsked?: boolean;
  /** What became of the newest offer, where it waits for the customer or was declined. */
  readonly offer?: "waiting" | "declined";
};

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

/** What came of it before it ended, that it ended, and whether what is here went back. */
const cancelledProgress = (states: readonly SensorState[], aside: ProgressAside): OrderProgress => {
  const came = states.length + (aside.replaced ?? 0);
  const here = states.filter((state) => state !== "collected").length + (aside.replacedHere ?? 0);
  const cancelled = { label: "Cancelled", state: "stopped" } as const;
  const ordered = { label: labels[0], state: "done" } as const;
  if (came === 0) return { steps: [ordered, cancelled], next: "This order was cancelled." };
  return {
    steps: [
      ordered,
      { label: labels[1], state: "done" },
      cancelled,
      { label: labels[4], state: here > 0 ? "now" : "done" },
    ],
    next:
      here > 0
        ? `This order was cancelled. ${here === 1 ? "1 sensor of yours is still here and goes" : `${here} sensors of yours are still here and go`} back to you.`
        : "This order was cancelled. Your sensors are back with you.",
  };
};

/** How many sensors are awaited in the place of others. */
export const awaitedInstead = (
  quantity: number,
  states: readonly SensorState[],
  { replaced = 0 }: ProgressAside,
): number => Math.min(Math.max(0, quantity - states.length), replaced);

/** What the customer is asked to send, where some of it came already. */
const toSend = (missing: number, quantity: number): string =>
  missing === quantity
    ? awaited[1]
    : `${missing} of ${quantity} ${missing === 1 ? "has" : "have"} not reached us yet: send or bring ${missing === 1 ? "it" : "them"}, with the order number.`;

/** What the customer is asked to send, where some of it takes the place of what is not measured. */
const sendText = (missing: number, quantity: number, instead: number, serials: readonly string[]): string => {
  const place =
    serials.length === instead
      ? serials.join(", ")
      : instead === 1
        ? "the one that is not measured"
        : "those that are not measured";
  const others = instead === 1 ? "another sensor" : `${instead} other sensors`;
  return missing === instead
    ? `We wait for ${others} in the place of ${place}. Send or bring ${instead === 1 ? "it" : "them"}, with the order number.`
    : `${toSend(missing, quantity)} We wait for ${others} of them in the place of ${place}.`;
};

const handedBack = (states: readonly SensorState[]): number =>
  states.filter((state) => state === "collected").length;

/** Of what is unfinished all stands still. */
const isAllHeld = (states: readonly SensorState[], { goingBack = 0, held = 0 }: ProgressAside): boolean => {
  const open = states.filter((state) => reached[state] < reached.issued).length - goingBack;
  return open > 0 && held >= open;
};

const nextText = (
  done: number,
  quantity: number,
  states: readonly SensorState[],
  aside: ProgressAside,
): string => {
  const instead = awaitedInstead(quantity, states, aside);
  const missing = quantity - states.length;
  if (done === 0 && aside.offer === "waiting") return "Our offer waits for your answer.";
  if (done === 0 && aside.offer === "declined") return "You declined our offer: we get in touch with you.";
  if (done === 1)
    return instead > 0
      ? sendText(missing, quantity, instead, aside.replacedSerials ?? [])
      : toSend(missing, quantity);
  if ((done === 2 || done === 3) && isAllHeld(states, aside))
    return aside.isAsked
      ? "The work stands still: we wait for your answer to our question."
      : "The work stands still until something about your sensors is settled.";
  if (
    done === 4 &&
    states.length > 0 &&
    states.length === (aside.goingBack ?? 0) + (aside.goneUnmeasured ?? 0)
  )
    return "Collect your sensors, or wait for their delivery. They go back unmeasured.";
  const gone = handedBack(states);
  if (done === 4 && gone > 0)
    return `Collect the ${states.length - gone === 1 ? "other one, or wait for its" : "others, or wait for their"} delivery. The certificates are here already.`;
  return awaited[done] ?? "Everything is done. Thank you.";
};

/** The slowest sensor decides how far the order is; what goes back unmeasured keeps nothing from going on. */
export const orderProgress = (
  orderState: OrderState,
  quantity: number,
  sensorStates: readonly SensorState[],
  aside: ProgressAside = {},
): OrderProgress => {
  if (orderState === "cancelled") return cancelledProgress(sensorStates, aside);
  const { goingBack = 0, goneUnmeasured = 0 } = aside;
  const all = sensorStates.length >= quantity;
  const steps = sensorStates.map((state) => reached[state]).toSorted((a, b) => a - b);
  // What goes back is among those just received, the slowest.
  const without = steps.slice(Math.min(goingBack, steps.length));
  const slowest = all ? Math.min(...without, ...(goingBack > 0 ? [reached.issued] : [])) : 0;
  const accepted = orderState === "accepted" || orderState === "completed";
  const done = accepted ? slowest + 1 : 0;
  const isNoneMeasured = all && quantity > 0 && goingBack + goneUnmeasured >= sensorStates.length;
  return {
    steps: labels.flatMap((word, index) => {
      if (isNoneMeasured && (index === 2 || index === 3)) return [];
      const gone = handedBack(sensorStates);
      const label =
        index === 0 && orderState === "requested"
          ? "Asked for"
          : index === 4 && gone > 0 && gone < quantity
            ? `${gone} of ${quantity} handed back`
            : word;
      return [{ label, state: index < done ? "done" : index > done ? "next" : "now" } as const];
    }),
    next: nextText(done, quantity, sensorStates, aside),
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
