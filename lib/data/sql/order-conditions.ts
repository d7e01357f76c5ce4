import { type OrderFilter, type OrderQuery, shownOf } from "@/lib/domain/order/list-query";
import { Prisma } from "@/lib/generated/prisma/client";
import { isReplaced, toHandBack } from "./hand-back";
import { orderHas } from "./order-words";

const inWork = Prisma.sql`o.state IN ('requested', 'recorded', 'accepted')`;

/** Written out, not handed over: only so does the planner see that the index of open orders has them all. */
const stateCondition = (filter: OrderFilter): readonly Prisma.Sql[] => {
  if (filter === "all") return [];
  return [filter === "open" ? inWork : Prisma.sql`o.state = ${filter}`];
};

/**
 * Of the offer that counts, the last one made; `t` is the offer. From each order in work by key: as a join, every offer of
 * the years would be read.
 */
const ofNewestOffer = (said: Prisma.Sql): Prisma.Sql =>
  Prisma.sql`(SELECT ${said} FROM quotation t WHERE t.order_id = o.id ORDER BY t.made_at DESC LIMIT 1)`;

/** Questions without an answer and an offer without one, of an order in work. */
const waiting = Prisma.sql`(${inWork} AND (
  EXISTS (SELECT FROM question q WHERE q.order_id = o.id
           AND NOT EXISTS (SELECT FROM answer a WHERE a.question_id = q.id))
  OR (o.state <> 'accepted' AND ${ofNewestOffer(
    Prisma.sql`NOT EXISTS (SELECT FROM agreement g WHERE g.quotation_id = t.id)`,
  )})))`;

/** The customer said no to the offer that counts, and nobody has accepted the order in the knowledge of it. */
const declined = Prisma.sql`(${inWork} AND ${ofNewestOffer(
  Prisma.sql`(SELECT g.answer = 'declined' AND (o.accepted_at IS NULL OR o.accepted_at < g.said_at)
     FROM agreement g WHERE g.quotation_id = t.id LIMIT 1)`,
)})`;

const held = Prisma.sql`(${inWork} AND EXISTS (
  SELECT FROM hold h WHERE h.order_id = o.id AND NOT EXISTS (SELECT FROM hold_release r WHERE r.hold_id = h.id)))`;

const expected = Prisma.sql`(o.state = 'accepted' AND EXISTS (
  SELECT FROM order_line l WHERE l.order_id = o.id
     AND l.quantity > (SELECT count(*) FROM sensor s WHERE s.order_line_id = l.id AND NOT ${isReplaced})))`;

/** From the few sensors that are to be handed back to their orders, each by key: a join would walk all lines. */
const toSend = Prisma.sql`o.id = ANY (ARRAY(
  SELECT (SELECT l.order_id FROM order_line l WHERE l.id = s.order_line_id) FROM sensor s WHERE ${toHandBack}))`;

type Asked = { readonly query: OrderQuery; readonly today: string; readonly atRisk: readonly string[] };

const onlyCondition = ({ query, today, atRisk }: Asked): readonly Prisma.Sql[] => {
  switch (query.only) {
    case "expected":
      return [expected];
    case "late":
      return [Prisma.sql`o.state = 'accepted' AND o.promised_on < ${today}::date`];
    case "risk":
      return [Prisma.sql`o.id = ANY (${[...atRisk]}::uuid[])`];
    case "send":
      return [toSend];
    case "waiting":
      return [waiting];
    case "declined":
      return [declined];
    case "held":
      return [held];
    default:
      return [];
  }
};

/** What an order must be to stand in the list; `o` is the order. */
export const orderConditions = (asked: Asked): readonly Prisma.Sql[] => {
  const { query } = asked;
  return [
    ...stateCondition(shownOf(query)),
    ...onlyCondition(asked),
    ...(query.customer ? [Prisma.sql`o.customer_id = ${query.customer}::uuid`] : []),
    ...(query.urgency === "express" ? [Prisma.sql`o.urgency = 'express'`] : []),
    ...(query.urgency === "standard" ? [Prisma.sql`o.urgency = 'standard'`] : []),
    ...(query.rules === "none" ? [Prisma.sql`o.rule_set = 'none'`] : []),
    ...(query.rules && query.rules !== "none"
      ? [Prisma.sql`o.rule_set <> 'none' AND o.rule_set = ${query.rules}`]
      : []),
    ...(query.from ? [Prisma.sql`o.recorded_at >= ${query.from}::date`] : []),
    ...(query.to ? [Prisma.sql`o.recorded_at < ${query.to}::date + 1`] : []),
    ...(query.due ? [Prisma.sql`o.promised_on <= ${query.due}::date`] : []),
    ...(query.q ? [orderHas(query.q)] : []),
  ];
};
export type OrderAsked = Asked;
