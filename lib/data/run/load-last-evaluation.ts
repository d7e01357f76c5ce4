import type { Tx } from "../in-scope";

export const loadLastEvaluation = (tx: Tx, runId: string) =>
  tx.evaluation.findFirst({ where: { runId }, orderBy: { sequence: "desc" } });
