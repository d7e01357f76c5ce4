import type { OrderState } from "../order/transitions";
import { type SensorState, sensorStates } from "./transitions";

export type SensorBead = {
  readonly key: "ordered" | SensorState;
  readonly label: string;
  readonly state: "done" | "now" | "next" | "stopped";
};

const labels: Readonly<Record<SensorState, string>> = {
  received: "Received",
  loaded: "Loaded",
  measured: "Measured",
  evaluated: "Evaluated",
  "in-review": "Reviewed",
  issued: "Issued",
  collected: "Collected",
};

const turns: Readonly<Record<SensorState, string>> = {
  received: "a technician loads it.",
  loaded: "a technician measures it.",
  measured: "a technician evaluates the run.",
  evaluated: "a technician submits the run.",
  "in-review": "the signatory reviews its results.",
  issued: "the front desk hands it back.",
  collected: "nothing is left to do here.",
};

/** What keeps a sensor from its next step. */
export type Waiting = { readonly isToBeReturned: boolean; readonly isAnswerOpen: boolean };

/** Whose turn it is; `isWithdrawn`: none of its certificates stands. On hold it is nobody's at the furnace: then it is said what the sensor waits for. */
export const nextOfSensor = (
  state: SensorState,
  holds: readonly Waiting[] = [],
  orderState: OrderState = "accepted",
  isWithdrawn = false,
): string => {
  if (state === "issued" && isWithdrawn)
    return "the front desk agrees with the customer, then hands it back: its certificate is withdrawn.";
  if (state === "received" && orderState === "cancelled")
    return "the front desk hands it back unmeasured: its order is cancelled.";
  if (holds.length === 0 || state === "issued" || state === "collected") return turns[state];
  if (holds.some(({ isAnswerOpen }) => isAnswerOpen))
    return "the customer answers; until then it is on hold.";
  if (holds.some(({ isToBeReturned }) => !isToBeReturned))
    return "the front desk, a signatory or the quality manager ends the hold.";
  return "the front desk hands it back unmeasured.";
};

/** "In review" is a bead still at work: it is behind a sensor only once that is issued. */
const isPast = (state: SensorState, bead: SensorState): boolean =>
  sensorStates.indexOf(state) >= sensorStates.indexOf(bead === "in-review" ? "issued" : bead);

/** One sensor's life; the bead at work is the first it has not passed. Without a certificate it ends early. */
export const sensorThread = (state: SensorState, withoutCertificate: boolean): readonly SensorBead[] => {
  const now = sensorStates.find((bead) => !isPast(state, bead));
  const stateOf = (bead: SensorState): SensorBead["state"] => {
    if (withoutCertificate && bead === "collected") return "stopped";
    if (withoutCertificate) return bead === "received" ? "done" : "next";
    if (isPast(state, bead)) return "done";
    return bead === now ? "now" : "next";
  };
  return [
    { key: "ordered", label: "Ordered", state: "done" },
    ...sensorStates.map((bead) => ({
      key: bead,
      label: withoutCertificate && bead === "collected" ? "Handed back" : labels[bead],
      state: stateOf(bead),
    })),
  ];
};
