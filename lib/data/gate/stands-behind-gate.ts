import type { Tx } from "../in-scope";

/** Whether a sensor stands in a run that has not begun to measure but has passed its gate. */
export const standsBehindGate = async (tx: Tx, sensorId: string): Promise<boolean> => {
  const places = await tx.loadPlace.findMany({
    where: { sensorId, run: { state: "planned" } },
    select: { runId: true },
  });
  const runIds = places.map(({ runId }) => runId);
  return (await tx.gateOutcome.count({ where: { runId: { in: runIds }, verdict: "may-start" } })) > 0;
};
