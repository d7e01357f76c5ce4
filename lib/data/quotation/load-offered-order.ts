import type { Tx } from "@/lib/data/in-scope";
import { loadOrder } from "@/lib/data/order/load-order";
import { isoDay } from "@/lib/domain/calibration/due";
import { readLineOptions } from "@/lib/domain/order/options";
import type { OfferedOrder } from "@/lib/domain/quotation/offered-order";

const columns = {
  urgency: true,
  ruleSet: true,
  promisedOn: true,
  lines: {
    select: {
      ...{ id: true, groupName: true, options: true, performedAt: true, siteAddress: true, providerId: true },
    },
  },
} as const;

/** An order with its options, its urgency and who else measures: what an offer speaks of. */
export const loadOfferedOrder = async (tx: Tx, number: string): Promise<OfferedOrder | null> => {
  const order = await loadOrder(tx, number);
  const row = order && (await tx.order.findUnique({ where: { id: order.id }, select: columns }));
  if (!order || !row) return null;
  const ids = row.lines.flatMap(({ providerId }) => providerId ?? []);
  const providers = await tx.provider.findMany({
    where: { id: { in: ids } },
    select: { id: true, name: true },
  });
  return {
    ...order,
    urgency: row.urgency === "express" ? "express" : "standard",
    ruleSet: row.ruleSet,
    promisedOn: row.promisedOn && isoDay(row.promisedOn),
    lines: order.lines.map((line) => {
      const more = row.lines.find(({ id }) => id === line.id);
      const providerId = more?.providerId ?? null;
      return {
        ...line,
        groupName: more?.groupName ?? "",
        options: readLineOptions(more?.options ?? "{}"),
        performedAt: more?.performedAt === "customer-site" ? "customer-site" : "laboratory",
        siteAddress: more?.siteAddress ?? "",
        providerId,
        providerName: providers.find(({ id }) => id === providerId)?.name ?? "",
      };
    }),
  };
};
