import { isoDay } from "@/lib/domain/calibration/due";
import type { GivenReason } from "@/lib/domain/gate/assessment";
import { readBenchRows } from "@/lib/domain/gate/bench-figures";
import type { BenchChecks } from "@/lib/domain/gate/plan";
import { standingReasons } from "@/lib/domain/gate/standing-reasons";
import type { Tx } from "../in-scope";

/** What was recorded for a run on a day, and the reasons that stand beside it. */
export const loadBench = async (
  tx: Tx,
  runId: string,
  day: string,
): Promise<{ readonly checks: BenchChecks; readonly reasons: readonly GivenReason[] }> => {
  const rows = await tx.benchCheck.findMany({ where: { runId }, orderBy: { id: "asc" } });
  const given = await tx.gateOverride.findMany({ where: { runId }, orderBy: { id: "asc" } });
  const today = rows.filter(({ checkedAt }) => isoDay(checkedAt) === day);
  return { checks: readBenchRows(today), reasons: standingReasons(given, today, day) };
};
