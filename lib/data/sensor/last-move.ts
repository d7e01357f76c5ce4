import { type HistoryEntry, readHistory } from "../audit/read-history";
import type { Tx } from "../in-scope";

/** What moves a thing along its thread; looking at it, printing or exporting does not. */
const moving: ReadonlySet<string> = new Set([
  "order.recorded",
  "order.amended",
  "order.accepted",
  "order.cancelled",
  "order.completed",
  "sensor.received",
  "sensor.collected",
  "run.created",
  "run.readings-received",
  "run.window-accepted",
  "run.evaluated",
  "run.submitted",
  "review.returned",
  "certificate.signed-off",
]);

const later = (last: HistoryEntry | null, entry: HistoryEntry): HistoryEntry | null =>
  !moving.has(entry.action) || (last && last.at >= entry.at) ? last : entry;

/** Who moved these sensors last: at the desk, in a run, or by signing off; `others` are facts known already. */
export const lastMove = async (
  tx: Tx,
  sensorIds: readonly string[],
  others: readonly HistoryEntry[] = [],
): Promise<HistoryEntry | null> => {
  const where = { sensorId: { in: [...sensorIds] } };
  const places = await tx.loadPlace.findMany({ where, select: { runId: true }, distinct: ["runId"] });
  const certificates = await tx.certificate.findMany({ where, select: { id: true } });
  const moves = [
    ...others,
    ...(await readHistory(tx, "sensor", sensorIds)),
    ...(await readHistory(
      tx,
      "run",
      places.map(({ runId }) => runId),
    )),
    ...(await readHistory(
      tx,
      "certificate",
      certificates.map(({ id }) => id),
    )),
  ];
  return moves.reduce<HistoryEntry | null>(later, null);
};
