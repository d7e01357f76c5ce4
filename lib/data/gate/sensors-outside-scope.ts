import { outsideScopeCodes } from "@/lib/domain/gate/outside-scope-codes";
import type { Tx } from "../in-scope";
import { loadPassedGate } from "./load-passed";

/** Sensors that were let through the gate on condition that their results are reported outside the scope, with why. */
export const sensorsOutsideScope = async (tx: Tx, runId: string): Promise<ReadonlyMap<string, string>> => {
  const passed = await loadPassedGate(tx, runId);
  return new Map(
    (passed?.rows ?? []).flatMap(({ code, subjects, reason, given }) =>
      given !== null && outsideScopeCodes.has(code) ? subjects.map((tag) => [tag, reason] as const) : [],
    ),
  );
};
