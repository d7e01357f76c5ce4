import type { Tx } from "@/lib/data/in-scope";
import { demandSaved } from "@/lib/data/versioned";
import { canonical } from "@/lib/domain/audit/canonical";
import { defaultIntakePolicy, type IntakePolicy, readIntakePolicy } from "@/lib/domain/intake/policy";

/** The limits of intake as they stand, with the row's version. */
export const loadIntakePolicy = async (
  tx: Tx,
): Promise<{ readonly policy: IntakePolicy; readonly version: number }> => {
  const row = await tx.laboratory.findUnique({
    where: { id: "laboratory" },
    select: { intakePolicy: true, version: true },
  });
  return row
    ? { policy: readIntakePolicy(row.intakePolicy), version: row.version }
    : { policy: defaultIntakePolicy, version: 1 };
};

export const saveIntakePolicy = async (tx: Tx, version: number, policy: IntakePolicy): Promise<void> =>
  demandSaved(
    await tx.laboratory.updateMany({
      where: { id: "laboratory", version },
      data: { intakePolicy: canonical(policy), version: { increment: 1 } },
    }),
  );
