import { countedUpTo } from "@/lib/domain/list/page";
import type { Tx } from "../in-scope";
import { allOf } from "./page-fragments";
import { type SensorAsked, sensorConditions } from "./sensor-conditions";

/** How many there are, counted until there are more than anybody reads. */
export const sensorCount = async (tx: Tx, asked: SensorAsked): Promise<number> => {
  const [row] = await tx.$queryRaw<{ count: number }[]>`
    SELECT count(*)::int AS count FROM (
      SELECT FROM sensor s WHERE ${allOf(sensorConditions(asked))} LIMIT ${countedUpTo + 1}) AS counted`;
  return row?.count ?? 0;
};
