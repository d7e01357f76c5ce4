import type { SensorQuery } from "@/lib/domain/sensor/list-query";
import type { Tx } from "../in-scope";
import { whyHandBack } from "./hand-back";
import { allOf } from "./page-fragments";
import { sensorConditions } from "./sensor-conditions";

export type WaitingSensorRow = {
  readonly id: string;
  readonly tag: string;
  readonly serial: string;
  readonly typeLetter: string;
  readonly order: string;
  readonly customer: string;
  /** Why it would be handed back, where that is what is asked for. */
  readonly why: string;
};

/** The first sensors by tag of a list, with whose they are. */
export const firstSensors = (
  tx: Tx,
  asked: { readonly query: SensorQuery; readonly today: string },
  limit: number,
): Promise<WaitingSensorRow[]> =>
  tx.$queryRaw<WaitingSensorRow[]>`
    SELECT s.id::text AS id, s.tag, s.serial, s.type_letter AS "typeLetter", o.number AS "order", c.name AS customer,
           ${whyHandBack} AS why
      FROM (SELECT * FROM sensor s WHERE ${allOf(sensorConditions(asked))} ORDER BY s.tag LIMIT ${limit}) AS s
      JOIN order_line l ON l.id = s.order_line_id JOIN customer_order o ON o.id = l.order_id
      JOIN customer c ON c.id = o.customer_id
     ORDER BY s.tag`;
