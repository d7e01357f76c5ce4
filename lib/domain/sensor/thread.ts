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

export const nextOfSensor = (state: SensorState): string => turns[state];

/** One sensor's life. Handed back without a certificate, its thread ends early. */
export const sensorThread = (state: SensorState, withoutCertificate: boolean): readonly SensorBead[] => {
  // The bead it stands at is the last one it reached; "Reviewed" is at work while the sensor is in review.
  const at = sensorStates.indexOf(state);
  return [
    { key: "ordered", label: "Ordered", state: "done" },
    ...sensorStates.map((bead, index): SensorBead => {
      const label = labels[bead];
      if (withoutCertificate && bead === "collected")
        return { key: bead, label: "Handed back", state: "stopped" };
      if (withoutCertificate) return { key: bead, label, state: index === 0 ? "done" : "next" };
      if (index < at || state === "collected") return { key: bead, label, state: "done" };
      return { key: bead, label, state: index === at ? "now" : "next" };
    }),
  ];
};
