import type { CustodyKind } from "@/lib/domain/custody/labels";
import type { Tx } from "../in-scope";
import { lastCustodyRows } from "../sql/last-custody";

export type LastLine = {
  readonly sensorId: string;
  readonly kind: CustodyKind;
  readonly placeCode: string;
  readonly placeName: string;
  readonly fromWhom: string;
  readonly toWhom: string;
  readonly happenedAt: Date;
};

/** The last line of the log of each of these sensors; of one without any, none. */
export const whereaboutsOf = async (
  tx: Tx,
  sensorIds: readonly string[],
): Promise<ReadonlyMap<string, LastLine>> => {
  const rows = await lastCustodyRows(tx, sensorIds);
  return new Map(rows.map((row) => [row.sensorId, { ...row, kind: row.kind as CustodyKind }]));
};
