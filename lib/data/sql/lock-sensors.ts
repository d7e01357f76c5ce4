import type { Tx } from "../in-scope";

export type LockedSensor = {
  readonly id: string;
  readonly tag: string;
  readonly state: string;
  readonly customerId: string;
  readonly orderLineId: string;
};

/** Locks these sensors until the transaction ends, always in the order of their ids, so that two runs cannot deadlock. */
export const lockSensors = (tx: Tx, sensorIds: readonly string[]): Promise<LockedSensor[]> =>
  tx.$queryRaw<LockedSensor[]>`
    select id::text as id, tag, state, customer_id::text as "customerId", order_line_id::text as "orderLineId"
    from sensor where id = any(${[...sensorIds]}::uuid[]) order by id for update`;
