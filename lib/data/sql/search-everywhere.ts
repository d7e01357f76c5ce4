import type { Hit, HitKind } from "@/lib/domain/search/group-hits";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { correctedSensors } from "./corrected-words";
import { beginsWith, keyOf, serialHolds, tailOf } from "./page-fragments";

/** A handful of each way of finding: each by an index and in its order, so that the size of the table does not matter. */
const few = 9;

type Way = { readonly rank: number; readonly where: Prisma.Sql; readonly order: Prisma.Sql };

/** How a column with a key and, where there is one, a key backwards can be found. */
const ways = (
  key: Prisma.Sql,
  wanted: Prisma.Sql,
  tail?: Prisma.Sql,
  backwards?: Prisma.Sql,
): readonly Way[] => [
  { rank: 0, where: Prisma.sql`${key} = ${wanted} AND ${wanted} <> ''`, order: Prisma.empty },
  { rank: 1, where: beginsWith(key, wanted), order: Prisma.sql`ORDER BY ${key} USING ~<~` },
  ...(tail && backwards
    ? [{ rank: 2, where: beginsWith(tail, backwards), order: Prisma.sql`ORDER BY ${tail} USING ~<~` }]
    : []),
];

const branches = (
  kind: HitKind,
  table: Prisma.Sql,
  all: readonly Way[],
  outer: { readonly columns: Prisma.Sql; readonly joins?: Prisma.Sql },
): readonly Prisma.Sql[] =>
  all.map(
    ({ rank, where, order }) => Prisma.sql`
      SELECT ${kind}::text AS kind, ${outer.columns}, ${rank}::int AS rank
        FROM (SELECT x.* FROM ${table} x WHERE ${where} ${order} LIMIT ${few}) AS x ${outer.joins ?? Prisma.empty}`,
  );

const sensorDetail = Prisma.sql`'type ' || x.type_letter || ', ' || c.name || ', order ' || o.number`;
const ofSensor = Prisma.sql`JOIN order_line l ON l.id = x.order_line_id JOIN customer_order o ON o.id = l.order_id
        JOIN customer c ON c.id = o.customer_id`;

const sensors = (text: string, upper: Prisma.Sql): readonly Prisma.Sql[] => [
  ...branches(
    "sensor",
    Prisma.sql`sensor`,
    [
      ...ways(Prisma.sql`x.tag`, upper),
      ...ways(Prisma.sql`x.serial_key`, keyOf(text), Prisma.sql`x.serial_tail`, tailOf(text)),
      { rank: 3, where: serialHolds(Prisma.sql`x.id`, text, few), order: Prisma.empty },
    ],
    {
      columns: Prisma.sql`x.tag AS key, x.serial || ', ' || x.tag AS label, ${sensorDetail} AS detail, x.state`,
      joins: ofSensor,
    },
  ),
  // By what a certificate calls it since a correction, which it says; under the name that its own pages have.
  Prisma.sql`SELECT 'sensor', x.tag, x.serial || ', ' || x.tag, 'certified as ' || g.serial || ', ' || ${sensorDetail}, x.state,
      CASE WHEN g.is_it THEN 0 ELSE 3 END
      FROM ${correctedSensors(text, few)} AS g JOIN sensor x ON x.id = g.sensor_id ${ofSensor}`,
];

const orders = (text: string, upper: Prisma.Sql): readonly Prisma.Sql[] =>
  branches(
    "order",
    Prisma.sql`customer_order`,
    [
      ...ways(Prisma.sql`x.number`, upper),
      ...ways(Prisma.sql`x.purchase_order_key`, keyOf(text), Prisma.sql`x.purchase_order_tail`, tailOf(text)),
    ],
    {
      columns: Prisma.sql`x.number AS key, x.number AS label,
        c.name || coalesce(', their ' || x.purchase_order, '') AS detail, x.state`,
      joins: Prisma.sql`JOIN customer c ON c.id = x.customer_id`,
    },
  );

/** Few enough that they are looked through from first to last. */
const small = (text: string): readonly Prisma.Sql[] => {
  const lower = Prisma.sql`lower(${text}::text)`;
  const grade = (column: Prisma.Sql) => Prisma.sql`CASE WHEN lower(${column}) = ${lower} THEN 0
      WHEN starts_with(lower(${column}), ${lower}) THEN 1 ELSE 2 END`;
  return [
    Prisma.sql`SELECT 'customer', c.id::text, c.name, c.contact_name, '', ${grade(Prisma.sql`c.name`)} AS rank FROM customer c
      WHERE position(${lower} IN lower(c.name)) > 0 ORDER BY rank, c.name LIMIT ${few}`,
    Prisma.sql`SELECT 'equipment', coalesce(f.id, e.id)::text || CASE WHEN f.id IS NULL THEN '' ELSE ' furnace' END, e.tag,
        e.kind || ', ' || e.maker || ' ' || e.model || ', serial ' || e.serial, e.state,
        least(${grade(Prisma.sql`e.tag`)}, ${grade(Prisma.sql`e.serial`)}) AS rank
        FROM equipment e LEFT JOIN furnace f ON f.equipment_id = e.id
      WHERE position(${lower} IN lower(e.tag)) > 0 OR position(${lower} IN lower(e.serial)) > 0
      ORDER BY rank, e.tag LIMIT ${few}`,
  ];
};

const papers = (upper: Prisma.Sql): readonly Prisma.Sql[] => {
  const byNumber = ways(Prisma.sql`x.number`, upper);
  return [
    ...branches("certificate", Prisma.sql`certificate`, byNumber, {
      columns: Prisma.sql`x.number AS key, x.number AS label,
        s.serial || ', ' || s.tag || ', ' || c.name AS detail, 'issued'::text AS state`,
      joins: Prisma.sql`JOIN sensor s ON s.id = x.sensor_id JOIN customer c ON c.id = x.customer_id`,
    }),
    ...branches("run", Prisma.sql`run`, byNumber, {
      columns: Prisma.sql`x.number AS key, x.number AS label, f.tag || ', ' || k.name AS detail, x.state`,
      joins: Prisma.sql`JOIN furnace_configuration k ON k.id = x.configuration_id JOIN furnace f ON f.id = k.furnace_id`,
    }),
    ...branches("nonconformity", Prisma.sql`nonconformity`, byNumber, {
      columns: Prisma.sql`x.number AS key, x.number AS label, x.title AS detail, x.state`,
    }),
    ...branches("paper", Prisma.sql`quotation`, byNumber, {
      columns: Prisma.sql`o.number AS key, x.number AS label, 'quotation of order ' || o.number AS detail, ''::text AS state`,
      joins: Prisma.sql`JOIN customer_order o ON o.id = x.order_id`,
    }),
    ...branches("paper", Prisma.sql`shipment`, byNumber, {
      columns: Prisma.sql`o.number AS key, x.number AS label, 'shipment of order ' || o.number AS detail, ''::text AS state`,
      joins: Prisma.sql`JOIN customer_order o ON o.id = x.order_id`,
    }),
  ];
};

/** Anything in the laboratory by what stands on it. A thing found in two ways comes twice. */
export const searchEverywhereSql = (text: string): Prisma.Sql => {
  const upper = Prisma.sql`upper(${text}::text)`;
  const all = [...sensors(text, upper), ...orders(text, upper), ...papers(upper), ...small(text)];
  return Prisma.sql`${Prisma.join(
    all.map((one) => Prisma.sql`(${one})`),
    " UNION ALL ",
  )}`;
};

export const searchEverywhere = (tx: Tx, text: string): Promise<Hit[]> =>
  tx.$queryRaw(searchEverywhereSql(text));
