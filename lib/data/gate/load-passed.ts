import { readStoredRows, type StoredRow } from "@/lib/domain/gate/stored-outcome";
import type { Tx } from "../in-scope";

export type PassedGate = {
  readonly at: Date;
  readonly by: string;
  readonly policy: string;
  readonly rows: readonly StoredRow[];
};

/** The gate of a run as it was passed: rows, answers and policy as they stood. Null where none was. */
export const loadPassedGate = async (tx: Tx, runId: string): Promise<PassedGate | null> => {
  const row = await tx.gateOutcome.findFirst({
    where: { runId, verdict: "may-start" },
    orderBy: { id: "desc" },
  });
  if (!row) return null;
  const person = await tx.person.findUnique({ where: { id: row.assessedById }, select: { name: true } });
  const { title } = JSON.parse(row.policy) as { title?: string };
  return {
    at: row.assessedAt,
    by: person?.name ?? "",
    policy: title ?? "",
    rows: readStoredRows(row.rows),
  };
};
