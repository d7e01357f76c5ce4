import type { CertificateQuery } from "@/lib/domain/certificate/list-query";
import { pageSize, type Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { allOf, beginsWith, direction, keyOf, onThisSide, serialHolds, tailOf } from "./page-fragments";

type NamedRow = { readonly id: string; readonly number: string };

/** By its own number, its sensor's serial or tag, its order's number, or its customer's name: each by an index of its own. */
const found = (text: string): Prisma.Sql => {
  const upper = Prisma.sql`upper(${text}::text)`;
  return Prisma.sql`c.id IN (
    SELECT n.id FROM certificate n WHERE ${beginsWith(Prisma.sql`n.number`, upper)}
    UNION ALL
    SELECT n.id FROM sensor s JOIN certificate n ON n.sensor_id = s.id
     WHERE ${beginsWith(Prisma.sql`s.serial_key`, keyOf(text))}
        OR ${beginsWith(Prisma.sql`s.serial_tail`, tailOf(text))} OR ${beginsWith(Prisma.sql`s.tag`, upper)}
    UNION ALL
    SELECT n.id FROM certificate n WHERE ${serialHolds(Prisma.sql`n.sensor_id`, text)}
    UNION ALL
    SELECT p.certificate_id FROM certificate_part p WHERE ${serialHolds(Prisma.sql`p.sensor_id`, text)}
    UNION ALL
    SELECT p.certificate_id FROM sensor s JOIN certificate_part p ON p.sensor_id = s.id
     WHERE ${beginsWith(Prisma.sql`s.serial_key`, keyOf(text))} OR ${beginsWith(Prisma.sql`s.tag`, upper)}
    UNION ALL
    SELECT n.id FROM customer_order o JOIN certificate n ON n.order_id = o.id
     WHERE ${beginsWith(Prisma.sql`o.number`, upper)}
    UNION ALL
    SELECT n.id FROM customer k JOIN certificate n ON n.customer_id = k.id
     WHERE position(lower(${text}::text) IN lower(k.name)) > 0)`;
};

const conditions = (query: CertificateQuery): readonly Prisma.Sql[] => [
  ...(query.customer ? [Prisma.sql`c.customer_id = ${query.customer}::uuid`] : []),
  ...(query.from ? [Prisma.sql`c.signed_at >= ${query.from}::date`] : []),
  ...(query.to ? [Prisma.sql`c.signed_at < ${query.to}::date + 1`] : []),
  ...(query.only === "pending"
    ? [Prisma.sql`c.id IN (SELECT p.certificate_id FROM certificate_pending p)`]
    : []),
  ...(query.q ? [found(query.q)] : []),
];

/** One page of certificates and one row more, the newest first. */
export const certificatePageSql = (query: CertificateQuery, turn: Turn): Prisma.Sql => {
  const anchor = turn.kind === "first" ? "" : turn.anchor;
  const side = onThisSide(turn, { moment: Prisma.sql`c.signed_at`, id: Prisma.sql`c.number` }, (column) =>
    column === "moment"
      ? Prisma.sql`(SELECT a.signed_at FROM certificate a WHERE a.number = ${anchor})`
      : Prisma.sql`${anchor}::text`,
  );
  return Prisma.sql`
    SELECT c.id::text AS id, c.number FROM certificate c
     WHERE ${allOf([...conditions(query), side])}
     ORDER BY c.signed_at ${direction(turn)}, c.number ${direction(turn)} LIMIT ${pageSize + 1}`;
};

export const certificatePage = (tx: Tx, query: CertificateQuery, turn: Turn): Promise<NamedRow[]> =>
  tx.$queryRaw(certificatePageSql(query, turn));
