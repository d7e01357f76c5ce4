import type { Tx } from "../in-scope";

type Named = {
  readonly id: string;
  readonly sensorId: string;
  readonly customerId: string;
  readonly runId: string;
  readonly evaluationId: string;
};

/** The sensors, sets, runs and evaluations that a certificate names, in its order. */
export const namedBy = async (tx: Tx, certificate: Named) => {
  const parts = await tx.certificatePart.findMany({
    where: { certificateId: certificate.id },
    orderBy: { position: "asc" },
  });
  return parts.length > 0 ? parts : [{ ...certificate, setKind: "as-received" }];
};

/** The sensors on it, the one it is filed under first. */
export const sensorsOn = async (tx: Tx, certificate: Named): Promise<readonly string[]> => [
  ...new Set([certificate.sensorId, ...(await namedBy(tx, certificate)).map(({ sensorId }) => sensorId)]),
];

/** The evaluations whose results it states. */
export const evaluationsOf = async (tx: Tx, certificate: Named): Promise<ReadonlySet<string>> =>
  new Set((await namedBy(tx, certificate)).map(({ evaluationId }) => evaluationId));
