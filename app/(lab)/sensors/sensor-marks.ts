import { sensorStateLabels } from "@/lib/domain/sensor/labels";
import { isSensorState, type SensorState } from "@/lib/domain/sensor/transitions";

const marks = {
  received: "open",
  loaded: "active",
  measured: "active",
  evaluated: "active",
  "in-review": "waiting",
  issued: "issued",
  collected: "done",
} as const satisfies Readonly<Record<SensorState, string>>;

export const sensorMarks = (state: string): { readonly state: string; readonly label: string } =>
  isSensorState(state)
    ? { state: marks[state], label: sensorStateLabels[state] }
    : { state: "open", label: state };
