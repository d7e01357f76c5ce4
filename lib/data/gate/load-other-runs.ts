import type { OtherRun } from "@/lib/domain/gate/plan";
import { openSetpoints } from "@/lib/domain/run/open-setpoints";
import type { Tx } from "../in-scope";
import { loadRunStanding } from "../run/load-run-standing";

/** Runs that measure now and have not settled all their setpoints: they hold their furnace and their channels. */
export const loadOtherRuns = async (tx: Tx, runId: string): Promise<readonly OtherRun[]> => {
  const rows = await tx.run.findMany({
    where: { state: "measuring", id: { not: runId } },
    include: { setpoints: true, places: true },
    orderBy: { number: "asc" },
  });
  const others: OtherRun[] = [];
  for (const row of rows) {
    const standing = await loadRunStanding(tx, row.id);
    const sensorIds = row.places.flatMap(({ sensorId }) => sensorId ?? []);
    if (openSetpoints(row.setpoints, sensorIds, standing.windows, standing.states).length === 0) continue;
    const scanner = await tx.equipment.findUniqueOrThrow({
      where: { id: row.scannerId },
      select: { tag: true },
    });
    others.push({
      run: row.number,
      scanner: scanner.tag,
      configurationId: row.configurationId,
      channels: row.places.map(({ channel }) => channel),
    });
  }
  return others;
};
