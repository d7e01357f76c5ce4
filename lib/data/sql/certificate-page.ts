import type { CertificateQuery } from "@/lib/domain/certificate/list-query";
import { pageSize, type Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { certificateHas, certificateWays } from "./certificate-words";
import { gatheredPage, type ListPage, mostGathered } from "./gathered";
import { allOf, direction, onThisSide } from "./page-fragments";
import { sensorWays } from "./sensor-words";

/** All but the words. */
const conditions = (query: CertificateQuery): readonly Prisma.Sql[] => [
  ...(query.customer ? [Prisma.sql`c.customer_id = ${query.customer}::uuid`] : []),
  ...(query.from ? [Prisma.sql`c.signed_at >= ${query.from}::date`] : []),
  ...(query.to ? [Prisma.sql`c.signed_at < ${query.to}::date + 1`] : []),
  ...(query.only === "pending"
    ? [Prisma.sql`c.id IN (SELECT p.certificate_id FROM certificate_pending p)`]
    : []),
];

const side = (turn: Turn, columns: { readonly moment: Prisma.Sql; readonly id: Prisma.Sql }): Prisma.Sql => {
  const anchor = turn.kind === "first" ? "" : turn.anchor;
  return onThisSide(turn, columns, (column) =>
    column === "moment"
      ? Prisma.sql`(SELECT n.signed_at FROM certificate n WHERE n.number = ${anchor})`
      : Prisma.sql`${anchor}::text`,
  );
};

/** Read in the list's own order, the newest first. */
const certificatePageSql = (query: CertificateQuery, turn: Turn): Prisma.Sql => {
  const where = [
    ...conditions(query),
    ...(query.q ? [certificateHas(query.q)] : []),
    side(turn, { moment: Prisma.sql`c.signed_at`, id: Prisma.sql`c.number` }),
  ];
  return Prisma.sql`
    SELECT c.id::text AS id, c.number AS name FROM certificate c WHERE ${allOf(where)}
     ORDER BY c.signed_at ${direction(turn)}, c.number ${direction(turn)} LIMIT ${pageSize + 1}`;
};

const byWords = async (
  tx: Tx,
  query: CertificateQuery,
  turn: Turn,
  most: number,
): Promise<ListPage | null> =>
  query.q
    ? gatheredPage(
        tx,
        {
          from: Prisma.sql`certificate c`,
          columns: {
            ...{ id: Prisma.sql`c.id`, name: Prisma.sql`c.number` },
            moment: Prisma.sql`c.signed_at`,
          },
          items: sensorWays(query.q, most),
          ways: certificateWays(query.q),
          conditions: conditions(query),
          side: side(turn, { moment: Prisma.sql`a.moment`, id: Prisma.sql`a.name` }),
          turn,
        },
        most,
      )
    : null;

/** One page of certificates and one row more, the newest first. */
export const certificatePage = async (
  tx: Tx,
  query: CertificateQuery,
  turn: Turn,
  most = mostGathered,
): Promise<ListPage["rows"]> =>
  (await byWords(tx, query, turn, most))?.rows ??
  (await tx.$queryRaw<ListPage["rows"]>(certificatePageSql(query, turn)));
