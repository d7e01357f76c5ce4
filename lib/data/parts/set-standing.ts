import { readLineOptions } from "@/lib/domain/order/options";
import { nextSet, type SetKind } from "@/lib/domain/parts/decide-set";
import type { Tx } from "../in-scope";

export type SetStanding = {
  readonly hasReceivedSet: boolean;
  readonly isAnnealed: boolean;
  /** The set its next measurement belongs to; null: it has to be annealed first. */
  readonly next: SetKind | null;
};

type SensorOfLine = { readonly id: string; readonly line: { readonly options: string } };

/** Where each sensor stands between its two sets: results as received kept, annealed, what comes next. */
export const setStanding = async (
  tx: Tx,
  sensors: readonly SensorOfLine[],
): Promise<ReadonlyMap<string, SetStanding>> => {
  const ids = sensors.map(({ id }) => id);
  const anneals = await tx.sensorAnneal.findMany({ where: { sensorId: { in: ids } } });
  const kept = await tx.reviewDecision.findMany({
    where: { sensorId: { in: ids }, decision: "kept" },
    select: { sensorId: true },
  });
  return new Map(
    sensors.map(({ id, line }) => {
      const given = {
        hasReceivedSet: kept.some(({ sensorId }) => sensorId === id),
        isAnnealed: anneals.some(({ sensorId }) => sensorId === id),
      };
      return [id, { ...given, next: nextSet(readLineOptions(line.options), given) }];
    }),
  );
};
