import type { Tx } from "@/lib/data/in-scope";
import { demandSaved } from "@/lib/data/versioned";
import { readSigningPolicy, SigningPolicy } from "@/lib/domain/signing/policy";

/** The laboratory's rule, or the platform's where no laboratory is recorded yet. */
export const loadSigningPolicy = async (tx: Tx): Promise<SigningPolicy> => {
  const row = await tx.laboratory.findUnique({
    where: { id: "laboratory" },
    select: { signingPolicy: true },
  });
  return row ? readSigningPolicy(row.signingPolicy) : SigningPolicy.parse({});
};

export const saveSigningPolicy = async (tx: Tx, version: number, policy: SigningPolicy): Promise<void> =>
  demandSaved(
    await tx.laboratory.updateMany({
      where: { id: "laboratory", version },
      data: { signingPolicy: JSON.stringify(policy), version: { increment: 1 } },
    }),
  );
