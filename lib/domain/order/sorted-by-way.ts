import type { SensorState } from "../sensor/transitions";
import { countedSensors } from "./counted-sensors";
import type { Order } from "./types";

/** Sensors of an order that no furnace of ours measures. */
export type Apart = {
  /** Ordered of lines an external provider does, and what came of them. */
  readonly forProvider: { readonly quantity: number; readonly sensors: readonly SensorState[] };
  /** They go back, or went back, unmeasured. */
  readonly unmeasured: readonly SensorState[];
};

/** What counts towards the order, by who measures it: we, a provider, nobody. Of a cancelled order all that came. */
export const sortedByWay = (
  { lines, state }: Pick<Order, "lines" | "state">,
  isUnmeasured: (sensorId: string) => boolean,
): { readonly ours: readonly SensorState[]; readonly apart: Apart } => {
  const sensors = lines.flatMap(({ marks, sensors: own }) =>
    (state === "cancelled" ? own : countedSensors(own)).map((sensor) => ({
      state: sensor.state,
      way: isUnmeasured(sensor.id) ? "unmeasured" : marks.providerId === null ? "ours" : "provider",
      isTheirs: marks.providerId !== null,
    })),
  );
  const statesOf = (way: string) => sensors.filter((one) => one.way === way).map((one) => one.state);
  const theirs = lines.reduce(
    (sum, { marks, quantity }) => sum + (marks.providerId === null ? 0 : quantity),
    0,
  );
  const theirsUnmeasured = sensors.filter(({ isTheirs, way }) => isTheirs && way === "unmeasured").length;
  return {
    ours: statesOf("ours"),
    apart: {
      forProvider: { quantity: theirs - theirsUnmeasured, sensors: statesOf("provider") },
      unmeasured: statesOf("unmeasured"),
    },
  };
};
