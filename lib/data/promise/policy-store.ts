import type { Tx } from "@/lib/data/in-scope";
import { demandSaved } from "@/lib/data/versioned";
import { canonical } from "@/lib/domain/audit/canonical";
import { defaultPromisePolicy, type PromisePolicy, readPromisePolicy } from "@/lib/domain/promise/policy";

/** What promised days are reckoned with, as it stands, with the row's version. */
export const loadPromisePolicy = async (
  tx: Tx,
): Promise<{ readonly policy: PromisePolicy; readonly version: number }> => {
  const row = await tx.laboratory.findUnique({
    where: { id: "laboratory" },
    select: { promisePolicy: true, version: true },
  });
  return row
    ? { policy: readPromisePolicy(row.promisePolicy), version: row.version }
    : { policy: defaultPromisePolicy, version: 1 };
};

export const savePromisePolicy = async (tx: Tx, version: number, policy: PromisePolicy): Promise<void> =>
  demandSaved(
    await tx.laboratory.updateMany({
      where: { id: "laboratory", version },
      data: { promisePolicy: canonical(policy), version: { increment: 1 } },
    }),
  );
