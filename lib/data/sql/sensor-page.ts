import { countedUpTo, pageSize, type Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { gatheredPage, type ListPage, mostGathered } from "./gathered";
import { allOf, direction } from "./page-fragments";
import { type SensorAsked, sensorConditions } from "./sensor-conditions";
import { sensorCount } from "./sensor-count";
import { sensorWays } from "./sensor-words";

const side = (turn: Turn, tag: Prisma.Sql): Prisma.Sql => {
  if (turn.kind === "first") return Prisma.sql`true`;
  return turn.kind === "after" ? Prisma.sql`${tag} < ${turn.anchor}` : Prisma.sql`${tag} > ${turn.anchor}`;
};

/** Read in the list's own order, the last tag first. */
const sensorPageSql = (asked: SensorAsked, turn: Turn): Prisma.Sql => Prisma.sql`
    SELECT s.id::text AS id, s.tag AS name FROM sensor s
     WHERE ${allOf([...sensorConditions(asked), side(turn, Prisma.sql`s.tag`)])}
     ORDER BY s.tag ${direction(turn)} LIMIT ${pageSize + 1}`;

const byWords = async (
  tx: Tx,
  { query: { find, ...others }, today }: SensorAsked,
  turn: Turn,
  most: number,
): Promise<ListPage | null> =>
  find
    ? gatheredPage(
        tx,
        {
          from: Prisma.sql`sensor s`,
          columns: { id: Prisma.sql`s.id`, name: Prisma.sql`s.tag`, moment: Prisma.sql`s.tag` },
          ways: sensorWays(find, most),
          conditions: sensorConditions({ query: others, today }),
          side: side(turn, Prisma.sql`a.name`),
          turn,
        },
        most,
      )
    : null;

/** Nothing but words narrows it, and they find more than is counted. */
const isUncounted = (asked: SensorAsked, most: number): boolean =>
  Boolean(asked.query.find) && sensorConditions(asked).length === 1 && most >= countedUpTo;

/** One page of sensors and one row more, the last tag first, with how many there are, counted as far as anybody reads. */
export const sensorPage = async (
  tx: Tx,
  asked: SensorAsked,
  turn: Turn,
  most = mostGathered,
): Promise<ListPage> =>
  (await byWords(tx, asked, turn, most)) ?? {
    rows: await tx.$queryRaw<ListPage["rows"]>(sensorPageSql(asked, turn)),
    count: isUncounted(asked, most) ? countedUpTo + 1 : await sensorCount(tx, asked),
  };
