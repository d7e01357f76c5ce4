/** The life of a sensor in the laboratory, in order; the thread on every page reads from this. */
export const sensorStates = [
  "received",
  "loaded",
  "measured",
  "evaluated",
  "in-review",
  "issued",
  "collected",
] as const;
export type SensorState = (typeof sensorStates)[number];

/**
 * Forward along the thread, back where work is returned or a run falls away, and out at any moment before loading:
 * a customer may want a sensor back uncalibrated. Straight to issued goes what an external provider measured.
 */
const next = {
  received: ["loaded", "issued", "collected"],
  loaded: ["measured", "received"],
  measured: ["evaluated", "received"],
  evaluated: ["in-review", "measured", "received"],
  "in-review": ["issued", "evaluated", "measured", "received"],
  issued: ["collected"],
  collected: [],
} as const satisfies Readonly<Record<SensorState, readonly SensorState[]>>;

export const canBecome = (from: SensorState, to: SensorState): boolean =>
  (next[from] as readonly SensorState[]).includes(to);

export const isSensorState = (value: string): value is SensorState =>
  (sensorStates as readonly string[]).includes(value);

/** "Issued" or beyond: nothing more is owed for it but handing it back. */
export const isDone = (state: SensorState): boolean => state === "issued" || state === "collected";
