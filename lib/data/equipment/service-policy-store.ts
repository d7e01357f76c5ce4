import type { Tx } from "@/lib/data/in-scope";
import { demandSaved } from "@/lib/data/versioned";
import { readServicePolicy, type ServicePolicy } from "@/lib/domain/equipment/service-policy";

/** The laboratory's, with the version of its row; before the laboratory is recorded, what counts where nothing is said. */
export const loadServicePolicy = async (
  tx: Tx,
): Promise<{ readonly policy: ServicePolicy; readonly version: number }> => {
  const row = await tx.laboratory.findFirst({ select: { servicePolicy: true, version: true } });
  return { policy: readServicePolicy(row?.servicePolicy ?? "{}"), version: row?.version ?? 1 };
};

export const saveServicePolicy = async (tx: Tx, version: number, policy: ServicePolicy): Promise<void> =>
  demandSaved(
    await tx.laboratory.updateMany({
      where: { version },
      data: { servicePolicy: JSON.stringify(policy), version: { increment: 1 } },
    }),
  );
