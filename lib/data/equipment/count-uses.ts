import { referenceUse } from "@/lib/domain/equipment/reference-use";
import { referenceTemperatures } from "@/lib/domain/evidence/reference-temperatures";
import type { Tx } from "../in-scope";
import { loadEvidence } from "../run/load-evidence";
import type { Run } from "../run/load-run";

export type CountedUse = {
  readonly tag: string;
  readonly hoursInFurnace: number;
  readonly hoursAbove1000: number;
};

/**
 * Writes what a run cost each of its references, from their stored readings. Once for a run: handed over again after a
 * return, nothing is counted twice.
 */
export const countUses = async (tx: Tx, run: Run, countedAt: Date): Promise<readonly CountedUse[]> => {
  const known = new Set(
    (await tx.referenceUse.findMany({ where: { runId: run.id }, select: { equipmentId: true } })).map(
      ({ equipmentId }) => equipmentId,
    ),
  );
  const places = run.places.filter(({ equipmentId }) => equipmentId !== null && !known.has(equipmentId));
  if (places.length === 0) return [];
  const loaded = await loadEvidence(tx, run.number, { channels: places.map(({ channel }) => channel) });
  const series = loaded ? referenceTemperatures(loaded.evidence) : [];
  const counted = places.flatMap((place) => {
    const own = series.find(({ channel }) => channel === place.channel);
    const use = own && referenceUse(own);
    return own && use ? [{ place, tag: own.id, use }] : [];
  });
  await tx.referenceUse.createMany({
    data: counted.map(({ place, use }) => ({
      equipmentId: place.equipmentId as string,
      runId: run.id,
      ...use,
      immersionMillimetre: place.immersionMillimetre,
      countedAt,
    })),
  });
  return counted.map(({ tag, use }) => ({
    tag,
    hoursInFurnace: use.hoursInFurnace,
    hoursAbove1000: use.hoursAbove1000,
  }));
};
