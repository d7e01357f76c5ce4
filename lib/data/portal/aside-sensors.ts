import { isDone, type SensorState } from "@/lib/domain/sensor/transitions";
import { holdsOf } from "../hold/holds-of";
import { replacedSensors } from "../hold/replaced-sensors";
import type { Tx } from "../in-scope";

export type AsideSensors = {
  /** They stand still now, because of something found or asked. */
  readonly held: ReadonlySet<string>;
  /** They go back unmeasured. */
  readonly goingBack: ReadonlySet<string>;
  /** Another is awaited, or came, in their place. */
  readonly replaced: ReadonlySet<string>;
};

/** Sensors of one order with which the work does not go on; what is done or gone stands still no more. */
export const asideSensors = async (
  tx: Tx,
  orderId: string,
  sensors: readonly { readonly id: string; readonly state: string }[],
): Promise<AsideSensors> => {
  const here = sensors.filter(({ state }) => !isDone(state as SensorState)).map(({ id }) => id);
  const holds = here.length > 0 ? await holdsOf(tx, here) : [];
  const held = new Set(holds.flatMap((hold) => (hold.isToBeReturned ? [] : [hold.sensorId])));
  return {
    held,
    goingBack: new Set(holds.flatMap(({ sensorId }) => (held.has(sensorId) ? [] : [sensorId]))),
    replaced: await replacedSensors(tx, [orderId]),
  };
};
