import type { LastTime } from "@/lib/domain/gate/plan";
import { acceptedIn, readStoredRows } from "@/lib/domain/gate/stored-outcome";
import type { Tx } from "../in-scope";

/** The last run of the same furnace configuration that passed its gate, and what was set aside there. */
export const loadLastTime = async (
  tx: Tx,
  run: { readonly id: string; readonly configurationId: string },
): Promise<LastTime | null> => {
  const others = await tx.run.findMany({
    where: { configurationId: run.configurationId, id: { not: run.id } },
    select: { id: true, number: true },
  });
  const last = await tx.gateOutcome.findFirst({
    where: { runId: { in: others.map(({ id }) => id) }, verdict: "may-start" },
    orderBy: { id: "desc" },
  });
  const number = others.find(({ id }) => id === last?.runId)?.number;
  return last && number ? acceptedIn(number, readStoredRows(last.rows)) : null;
};
