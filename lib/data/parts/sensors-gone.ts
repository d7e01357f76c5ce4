import type { Tx } from "../in-scope";

/** Sensors that left the review of a run, put back or with their results kept: this run moves them no more. */
export const sensorsGone = async (tx: Tx, runId: string): Promise<ReadonlySet<string>> => {
  const rows = await tx.reviewDecision.findMany({
    where: { runId, decision: { in: ["put-back", "kept"] } },
    select: { sensorId: true },
  });
  return new Set(rows.flatMap(({ sensorId }) => sensorId ?? []));
};
