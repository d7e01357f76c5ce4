import type { Tx } from "../in-scope";
import { whereaboutsOf } from "./whereabouts-of";

/** Which of these sensors are with an external provider by the last line of their logs, by their ids, and with whom. */
export const awayOf = async (tx: Tx, sensorIds: readonly string[]): Promise<ReadonlyMap<string, string>> =>
  new Map(
    [...(await whereaboutsOf(tx, sensorIds))].flatMap(([id, { kind, toWhom }]) =>
      kind === "to-provider" ? [[id, toWhom]] : [],
    ),
  );
