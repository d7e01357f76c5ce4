import { pageSize, type Turn } from "@/lib/domain/list/page";
import { Prisma } from "@/lib/generated/prisma/client";
import type { Tx } from "../in-scope";
import { direction, onThisSide } from "./page-fragments";

/** One page of messages and one more, the newest first. */
export const mailPage = (tx: Tx, turn: Turn): Promise<{ readonly id: string }[]> => {
  const anchor = turn.kind === "first" ? null : turn.anchor;
  const side = onThisSide(turn, { moment: Prisma.sql`m.enqueued_at`, id: Prisma.sql`m.id` }, (column) =>
    column === "moment"
      ? Prisma.sql`(SELECT a.enqueued_at FROM mail_message a WHERE a.id = ${anchor}::uuid)`
      : Prisma.sql`${anchor}::uuid`,
  );
  return tx.$queryRaw`
    SELECT m.id::text AS id FROM mail_message m WHERE ${side}
     ORDER BY m.enqueued_at ${direction(turn)}, m.id ${direction(turn)} LIMIT ${pageSize + 1}`;
};
