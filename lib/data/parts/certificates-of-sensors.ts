import type { Tx } from "../in-scope";

/** The certificates that speak of these sensors: one entry for each sensor, be it the one it is filed under or not. */
export const certificatesOfSensors = async (tx: Tx, sensorIds: readonly string[]) => {
  const parts = await tx.certificatePart.findMany({
    where: { sensorId: { in: [...sensorIds] } },
    select: { certificateId: true, sensorId: true },
  });
  const rows = await tx.certificate.findMany({
    where: {
      OR: [{ sensorId: { in: [...sensorIds] } }, { id: { in: parts.map((one) => one.certificateId) } }],
    },
    select: { id: true, number: true, sensorId: true, token: true, signedById: true, signedAt: true },
    orderBy: { number: "asc" },
  });
  return rows.flatMap((row) => {
    const covered = new Set([
      row.sensorId,
      ...parts.filter(({ certificateId }) => certificateId === row.id).map(({ sensorId }) => sensorId),
    ]);
    return sensorIds.filter((id) => covered.has(id)).map((sensorId) => ({ ...row, sensorId }));
  });
};
