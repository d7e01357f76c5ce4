import type { Tx } from "@/lib/data/in-scope";
import { demandSaved } from "@/lib/data/versioned";
import { AccountPolicy, readAccountPolicy } from "@/lib/domain/account/policy";

/** The laboratory's rule, or the platform's where no laboratory is recorded yet. */
export const loadAccountPolicy = async (tx: Tx): Promise<AccountPolicy> => {
  const row = await tx.laboratory.findUnique({
    where: { id: "laboratory" },
    select: { accountPolicy: true },
  });
  return row ? readAccountPolicy(row.accountPolicy) : AccountPolicy.parse({});
};

export const saveAccountPolicy = async (tx: Tx, version: number, policy: AccountPolicy): Promise<void> =>
  demandSaved(
    await tx.laboratory.updateMany({
      where: { id: "laboratory", version },
      data: { accountPolicy: JSON.stringify(policy), version: { increment: 1 } },
    }),
  );
