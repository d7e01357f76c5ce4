import type { Tx } from "../in-scope";
import { sensorsOn } from "./sensors-on";

/** Who is reviewed once more, and for which certificate. */
export type Replacing = { readonly sensorId: string; readonly certificate: string };

/** Few are asked for at a time, so that these are looked up first: of a run's certificates nothing else is read. */
const askedOf = async (tx: Tx, runId: string) => {
  const asked = await tx.amendment.findMany({
    where: { kind: "replacement", decision: null },
    select: { certificateId: true },
  });
  if (asked.length === 0) return [];
  return tx.certificate.findMany({
    where: { runId, id: { in: asked.map(({ certificateId }) => certificateId) } },
    select: { id: true, number: true, sensorId: true, customerId: true, runId: true, evaluationId: true },
  });
};

/** Whether somebody asked for new results of this run, which is signed off: then it may be evaluated once more. */
export const awaitsReplacement = async (tx: Tx, runId: string): Promise<boolean> =>
  (await askedOf(tx, runId)).length > 0;

/**
 * The sensors of certificates from this run that are to be replaced and for which it was evaluated since. Their new
 * results are opened and remarked on like those of any run, though the run is signed off.
 */
export const loadReplacing = async (
  tx: Tx,
  runId: string,
  evaluationId: string,
): Promise<readonly Replacing[]> => {
  const found: Replacing[] = [];
  for (const certificate of await askedOf(tx, runId)) {
    if (certificate.evaluationId === evaluationId) continue;
    for (const sensorId of await sensorsOn(tx, certificate))
      found.push({ sensorId, certificate: certificate.number });
  }
  return found;
};
