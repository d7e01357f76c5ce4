import { isoDay } from "@/lib/domain/calibration/due";
import type { Tx } from "../in-scope";

export type StoredUse = {
  readonly run: string;
  /** ISO day on which the run began. */
  readonly on: string;
  readonly hoursInFurnace: number;
  readonly hoursAbove1000: number;
  readonly highestCelsius: number;
  readonly immersionMillimetre: number | null;
};

/** What the runs cost a reference, in the order of time. */
export const loadUses = async (tx: Tx, equipmentId: string): Promise<readonly StoredUse[]> => {
  const uses = await tx.referenceUse.findMany({ where: { equipmentId }, orderBy: { id: "asc" } });
  const runs = await tx.run.findMany({
    where: { id: { in: uses.map(({ runId }) => runId) } },
    select: { id: true, number: true, startedAt: true, createdAt: true },
  });
  return uses
    .flatMap((use) => {
      const run = runs.find(({ id }) => id === use.runId);
      return run ? [{ ...use, run: run.number, on: isoDay(run.startedAt ?? run.createdAt) }] : [];
    })
    .toSorted((one, other) => one.on.localeCompare(other.on) || one.run.localeCompare(other.run));
};
