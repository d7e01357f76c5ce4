import { Refused } from "@/lib/domain/refusal";
import { sensorStateLabels } from "@/lib/domain/sensor/labels";
import { canBecome, isSensorState, type SensorState } from "@/lib/domain/sensor/transitions";
import type { Tx } from "../in-scope";
import { isUuid } from "../is-uuid";
import { type LockedSensor, lockSensors } from "../sql/lock-sensors";

/**
 * Moves sensors along their thread, all or none. `from` names the states the caller expects; a sensor already in `to`
 * passes only if `from` names `to` as well. Returns the sensors as they were, locked until the transaction ends.
 */
export const setSensorState = async (
  tx: Tx,
  sensorIds: readonly string[],
  from: readonly SensorState[],
  to: SensorState,
): Promise<readonly LockedSensor[]> => {
  for (const state of from)
    if (state !== to && !canBecome(state, to))
      throw new Error(`No sensor may go from ${state} to ${to}: see the transition table`);
  const ids = [...new Set(sensorIds)];
  const sensors = ids.every(isUuid) ? await lockSensors(tx, ids) : [];
  if (sensors.length !== ids.length)
    throw new Refused({
      code: "not-found",
      message: "A sensor named here does not exist. Nothing was changed.",
    });
  const wrong = sensors.filter((sensor) => !from.some((state) => state === sensor.state));
  if (wrong.length > 0) throw new Refused({ code: "wrong-state", message: wrongStateMessage(wrong, from) });
  await tx.sensor.updateMany({
    where: { id: { in: ids }, NOT: { state: to } },
    data: { state: to, version: { increment: 1 } },
  });
  return sensors;
};

const word = (state: string): string =>
  (isSensorState(state) ? sensorStateLabels[state] : state).toLowerCase();

const wrongStateMessage = (wrong: readonly LockedSensor[], from: readonly SensorState[]): string =>
  `${wrong.map((sensor) => `${sensor.tag} is ${word(sensor.state)}`).join(", ")}; this needs ${from
    .map(word)
    .join(" or ")}. Nothing was changed.`;
