import type { Tx } from "../in-scope";
import { sensorsOn } from "./sensors-on";

/** Who is reviewed once more, and for which certificate. */
export type Replacing = { readonly sensorId: string; readonly certificate: string };

const askedOf = async (tx: Tx, runId: string) => {
  const certificates = await tx.certificate.findMany({ where: { runId } });
  const asked = await tx.amendment.findMany({
    where: {
      ...{ kind: "replacement", decision: null },
      certificateId: { in: certificates.map(({ id }) => id) },
    },
    select: { certificateId: true },
  });
  return certificates.filter(({ id }) => asked.some(({ certificateId }) => certificateId === id));
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
