import type { Anneal } from "@/lib/domain/certificate/texts-of-parts";
import type { Tx } from "../in-scope";

/** What the laboratory annealed, by sensor id, in the order of time. */
export const annealsOf = async (
  tx: Tx,
  sensorIds: readonly string[],
): Promise<ReadonlyMap<string, readonly Anneal[]>> => {
  const rows = await tx.sensorAnneal.findMany({
    where: { sensorId: { in: [...sensorIds] } },
    orderBy: [{ performedOn: "asc" }, { recordedAt: "asc" }],
  });
  return new Map(
    sensorIds.map((id) => [
      id,
      rows
        .filter(({ sensorId }) => sensorId === id)
        .map(({ celsius, hours, manner, performedOn }) => ({
          celsius,
          hours,
          manner,
          performedOn: performedOn.toISOString().slice(0, 10),
        })),
    ]),
  );
};
