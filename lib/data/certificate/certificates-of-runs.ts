import type { Tx } from "../in-scope";

/** Ids of the certificates that state results of these runs, be it the one they are filed under or another they draw from. */
export const certificatesOfRuns = async (tx: Tx, runIds: readonly string[]): Promise<string[]> => {
  if (runIds.length === 0) return [];
  const rows = await tx.certificate.findMany({ where: { runId: { in: [...runIds] } }, select: { id: true } });
  const parts = await tx.certificatePart.findMany({
    where: { runId: { in: [...runIds] } },
    distinct: ["certificateId"],
    select: { certificateId: true },
  });
  return [...new Set([...rows.map(({ id }) => id), ...parts.map(({ certificateId }) => certificateId)])];
};
