import { pageSize, type Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { allOf, direction } from "./page-fragments";
import { type SensorAsked, sensorConditions } from "./sensor-conditions";

type NamedRow = { readonly id: string; readonly tag: string };

const side = (turn: Turn): readonly Prisma.Sql[] => {
  if (turn.kind === "first") return [];
  return [turn.kind === "after" ? Prisma.sql`s.tag < ${turn.anchor}` : Prisma.sql`s.tag > ${turn.anchor}`];
};

/** One page of sensors and one row more, the last tag first. */
export const sensorPageSql = (asked: SensorAsked, turn: Turn): Prisma.Sql => Prisma.sql`
    SELECT s.id::text AS id, s.tag FROM sensor s
     WHERE ${allOf([...sensorConditions(asked), ...side(turn)])}
     ORDER BY s.tag ${direction(turn)} LIMIT ${pageSize + 1}`;

export const sensorPage = (tx: Tx, asked: SensorAsked, turn: Turn): Promise<NamedRow[]> =>
  tx.$queryRaw(sensorPageSql(asked, turn));
