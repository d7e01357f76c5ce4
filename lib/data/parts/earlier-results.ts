import { isSameSetpoint } from "@/lib/domain/parts/same-setpoint";
import type { Tx } from "../in-scope";
import type { Run } from "../run/load-run";

export type EarlierResults = {
  readonly sensorId: string;
  readonly tag: string;
  readonly earlierRunId: string;
  readonly earlierRun: string;
  readonly isAuthorised: boolean;
};

const loadResults = (tx: Tx, run: Run, sensorIds: readonly string[]) =>
  tx.result.findMany({
    where: { sensorId: { in: [...sensorIds] }, runId: { not: run.id }, state: { not: "not-reached" } },
    select: { sensorId: true, runId: true, setpointId: true },
  });

/**
 * Sensors of this load that another run measured already, of the same set and at one of the same setpoints: the last
 * such run, and whether the repeat is authorised. Not reached is not measured.
 */
export const earlierResults = async (tx: Tx, run: Run): Promise<readonly EarlierResults[]> => {
  const setOf = new Map(
    run.places.flatMap((place) => (place.sensorId ? [[place.sensorId, place.setKind]] : [])),
  );
  const results = await loadResults(tx, run, [...setOf.keys()]);
  const runIds = [...new Set(results.map(({ runId }) => runId))];
  if (runIds.length === 0) return [];
  const setpoints = await tx.runSetpoint.findMany({ where: { runId: { in: runIds } } });
  const runs = await tx.run.findMany({
    where: { id: { in: runIds } },
    include: { places: { select: { sensorId: true, setKind: true } } },
    orderBy: { createdAt: "desc" },
  });
  const repeats = await tx.repeatMeasurement.findMany({
    where: { runId: run.id },
    select: { sensorId: true },
  });
  const sensors = await tx.sensor.findMany({
    where: { id: { in: [...setOf.keys()] } },
    orderBy: { tag: "asc" },
  });
  const isSame = (setpointId: string) => {
    const celsius = setpoints.find(({ id }) => id === setpointId)?.celsius;
    return celsius !== undefined && run.setpoints.some((one) => isSameSetpoint(one.celsius, celsius));
  };
  return sensors.flatMap(({ id, tag }) => {
    const earlier = runs.find(
      (other) =>
        other.places.some(({ sensorId, setKind }) => sensorId === id && setKind === setOf.get(id)) &&
        results.some((one) => one.sensorId === id && one.runId === other.id && isSame(one.setpointId)),
    );
    return earlier
      ? [
          {
            sensorId: id,
            tag,
            earlierRunId: earlier.id,
            earlierRun: earlier.number,
            isAuthorised: repeats.some(({ sensorId }) => sensorId === id),
          },
        ]
      : [];
  });
};
