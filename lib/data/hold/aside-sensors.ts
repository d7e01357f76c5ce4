import { isDone, type SensorState } from "@/lib/domain/sensor/transitions";
import type { Tx } from "../in-scope";
import { holdsOf } from "./holds-of";
import { replacedSensors } from "./replaced-sensors";

export type AsideSensors = {
  /** They stand still now, because of something found or asked. */
  readonly held: ReadonlySet<string>;
  /** They go back unmeasured. */
  readonly goingBack: ReadonlySet<string>;
  /** Another is awaited, or came, in their place. */
  readonly replaced: ReadonlySet<string>;
};

/** Sensors of these orders with which the work does not go on; what is done or gone stands still no more. */
export const asideSensors = async (
  tx: Tx,
  orderIds: readonly string[],
  sensors: readonly { readonly id: string; readonly state: string }[],
): Promise<AsideSensors> => {
  const here = sensors.filter(({ state }) => !isDone(state as SensorState)).map(({ id }) => id);
  const holds = here.length > 0 ? await holdsOf(tx, here) : [];
  const held = new Set(holds.flatMap((hold) => (hold.isToBeReturned ? [] : [hold.sensorId])));
  return {
    held,
    goingBack: new Set(holds.flatMap(({ sensorId }) => (held.has(sensorId) ? [] : [sensorId]))),
    replaced: await replacedSensors(tx, orderIds),
  };
};
