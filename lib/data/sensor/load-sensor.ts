import type { SensorState } from "@/lib/domain/sensor/transitions";
import type { Tx } from "../in-scope";

export type FoundSensor = {
  readonly id: string;
  readonly tag: string;
  readonly state: SensorState;
  readonly orderNumber: string;
};

/** By tag, not locked: `setSensorState` looks again, under its lock. */
export const findSensor = async (tx: Tx, tag: string): Promise<FoundSensor | null> => {
  const row = await tx.sensor.findUnique({
    where: { tag },
    select: { id: true, tag: true, state: true, line: { select: { order: { select: { number: true } } } } },
  });
  return (
    row && { id: row.id, tag: row.tag, state: row.state as SensorState, orderNumber: row.line.order.number }
  );
};
