import { Prisma } from "@/lib/generated/prisma/client";
import { beginsWith, isNamed, keyOf, tailOf, upperOf } from "./page-fragments";

const numberHas = (order: Prisma.Sql, text: string): Prisma.Sql =>
  beginsWith(Prisma.sql`${order}.number`, upperOf(text));
const purchaseOrderBegins = (order: Prisma.Sql, text: string): Prisma.Sql =>
  beginsWith(Prisma.sql`${order}.purchase_order_key`, keyOf(text));
const purchaseOrderEnds = (order: Prisma.Sql, text: string): Prisma.Sql =>
  beginsWith(Prisma.sql`${order}.purchase_order_tail`, tailOf(text));

/**
 * Statements that each find ids of orders by an index: by their number, by the customer's number for them, from its
 * beginning or its end, and by the customer's name.
 */
export const orderWays = (text: string): readonly Prisma.Sql[] => {
  const where = (condition: Prisma.Sql) => Prisma.sql`SELECT n.id FROM customer_order n WHERE ${condition}`;
  const n = Prisma.sql`n`;
  return [
    where(numberHas(n, text)),
    where(purchaseOrderBegins(n, text)),
    where(purchaseOrderEnds(n, text)),
    Prisma.sql`SELECT n.id FROM customer k JOIN customer_order n ON n.customer_id = k.id WHERE ${isNamed(Prisma.sql`k`, text)}`,
  ];
};

/** The same of one order `o`, where the list is read in its own order. */
export const orderHas = (text: string): Prisma.Sql => {
  const o = Prisma.sql`o`;
  return Prisma.sql`(${numberHas(o, text)} OR ${purchaseOrderBegins(o, text)} OR ${purchaseOrderEnds(o, text)}
    OR o.customer_id = ANY (ARRAY(SELECT k.id FROM customer k WHERE ${isNamed(Prisma.sql`k`, text)})))`;
};
