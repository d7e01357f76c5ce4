import { decideFirstReading } from "@/lib/domain/gate/decide-first-reading";
import { demand } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";
import type { Run } from "../run/load-run";
import { gatePassedAt } from "./plan-digest";

/** Before the first reading of a run: its gate is passed, with this load, on that day. Later blocks follow the first. */
export const demandGatePassed = async (tx: Tx, run: Run, startedAt: Date): Promise<void> => {
  if (run.startedAt === null) demand(decideFirstReading(run, await gatePassedAt(tx, run), startedAt));
};
