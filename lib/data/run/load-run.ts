import { comparePlaces } from "@/lib/domain/run/compare-places";
import type { Tx } from "../in-scope";
import { lockRun } from "../sql/lock-run";

const parts = { setpoints: { orderBy: { position: "asc" } }, places: true } as const;

/** A run with its setpoints in order and its places as a person counts them. */
export const loadRun = async (tx: Tx, number: string) => {
  const run = await tx.run.findUnique({ where: { number }, include: parts });
  return run && { ...run, places: run.places.toSorted(comparePlaces) };
};

export type Run = NonNullable<Awaited<ReturnType<typeof loadRun>>>;

/** The same, locked until the transaction ends: whoever writes to a run takes turns. */
export const loadRunForUpdate = async (tx: Tx, number: string): Promise<Run | null> => {
  const found = await tx.run.findUnique({ where: { number }, select: { id: true } });
  const locked = found && (await lockRun(tx, found.id));
  return locked ? loadRun(tx, number) : null;
};
