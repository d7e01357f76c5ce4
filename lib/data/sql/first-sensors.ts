import type { Tx } from "../in-scope";

export type WaitingSensorRow = {
  readonly id: string;
  readonly tag: string;
  readonly serial: string;
  readonly typeLetter: string;
  readonly order: string;
  readonly customer: string;
};

/** The first sensors by tag that are in a state, with whose they are. */
export const firstSensors = (tx: Tx, state: string, limit: number): Promise<WaitingSensorRow[]> =>
  tx.$queryRaw<WaitingSensorRow[]>`
    SELECT s.id::text AS id, s.tag, s.serial, s.type_letter AS "typeLetter", o.number AS "order", c.name AS customer
      FROM (SELECT * FROM sensor WHERE state = ${state} ORDER BY tag LIMIT ${limit}) AS s
      JOIN order_line l ON l.id = s.order_line_id JOIN customer_order o ON o.id = l.order_id
      JOIN customer c ON c.id = o.customer_id
     ORDER BY s.tag`;
