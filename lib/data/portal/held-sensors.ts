import { holdsOf } from "../hold/holds-of";
import type { Tx } from "../in-scope";

/** Which of these sensors stand still now, because of something found or asked. */
export const heldSensorIds = async (tx: Tx, sensorIds: readonly string[]): Promise<ReadonlySet<string>> =>
  new Set(sensorIds.length > 0 ? (await holdsOf(tx, sensorIds)).map(({ sensorId }) => sensorId) : []);
