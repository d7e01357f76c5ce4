import { pageSize, type Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { allOf } from "./page-fragments";

export type CustomerRow = {
  readonly id: string;
  readonly name: string;
  readonly contactName: string;
  readonly email: string;
  readonly orders: number;
  readonly open: number;
  readonly people: number;
};

const side = (turn: Turn): readonly Prisma.Sql[] => {
  if (turn.kind === "first") return [];
  const name = Prisma.sql`(SELECT a.name FROM customer a WHERE a.id = ${turn.anchor}::uuid)`;
  return [turn.kind === "after" ? Prisma.sql`c.name > ${name}` : Prisma.sql`c.name < ${name}`];
};

/** One page of customers by name, and one row more; how many orders each has, and how many of them are in work. */
export const customerPage = (tx: Tx, find: string, turn: Turn): Promise<CustomerRow[]> => {
  const found = find === "" ? [] : [Prisma.sql`position(lower(${find}::text) IN lower(c.name)) > 0`];
  const order = turn.kind === "before" ? Prisma.sql`DESC` : Prisma.sql`ASC`;
  return tx.$queryRaw`
    SELECT c.id::text AS id, c.name, c.contact_name AS "contactName", c.email,
           (SELECT count(*) FROM (SELECT FROM customer_order o WHERE o.customer_id = c.id LIMIT 501) AS counted)::int AS orders,
           (SELECT count(*) FROM customer_order o WHERE o.customer_id = c.id
             AND o.state IN ('requested', 'recorded', 'accepted'))::int AS open,
           (SELECT count(*) FROM person p WHERE p.customer_id = c.id)::int AS people
      FROM (SELECT id, name, contact_name, email FROM customer c WHERE ${allOf([...found, ...side(turn)])}
             ORDER BY c.name ${order} LIMIT ${pageSize + 1}) AS c
     ORDER BY c.name ${order}`;
};
