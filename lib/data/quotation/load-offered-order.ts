import { replacedSensors } from "@/lib/data/hold/replaced-sensors";
import type { Tx } from "@/lib/data/in-scope";
import { type OrderRow, orderOf, orderParts } from "@/lib/data/order/order-of";
import { isoDay } from "@/lib/domain/calibration/due";
import { readLineOptions } from "@/lib/domain/order/options";
import type { OfferedOrder } from "@/lib/domain/quotation/offered-order";

type Known = {
  /** Sensors that another one is awaited for. */
  readonly replaced: ReadonlySet<string>;
  readonly providerNames: ReadonlyMap<string, string>;
};

const offeredOf = (row: OrderRow, { replaced, providerNames }: Known): OfferedOrder => {
  const order = orderOf(row, replaced);
  const rows = new Map(row.lines.map((line) => [line.id, line]));
  return {
    ...order,
    urgency: row.urgency === "express" ? "express" : "standard",
    ruleSet: row.ruleSet,
    promisedOn: row.promisedOn && isoDay(row.promisedOn),
    lines: order.lines.map((line) => {
      const more = rows.get(line.id);
      const providerId = more?.providerId ?? null;
      return {
        ...line,
        groupName: more?.groupName ?? "",
        options: readLineOptions(more?.options ?? "{}"),
        performedAt: more?.performedAt === "customer-site" ? "customer-site" : "laboratory",
        siteAddress: more?.siteAddress ?? "",
        providerId,
        providerName: (providerId && providerNames.get(providerId)) ?? "",
      };
    }),
  };
};

/** Orders with their options, their urgency and who else measures: what an offer speaks of. As many questions as for one. */
export const loadOfferedOrders = async (
  tx: Tx,
  numbers: readonly string[],
): Promise<readonly OfferedOrder[]> => {
  const rows = await tx.order.findMany({ where: { number: { in: [...numbers] } }, include: orderParts });
  const replaced = await replacedSensors(
    tx,
    rows.map(({ id }) => id),
  );
  const ids = rows.flatMap(({ lines }) => lines.flatMap(({ providerId }) => providerId ?? []));
  const providers = await tx.provider.findMany({
    where: { id: { in: ids } },
    select: { id: true, name: true },
  });
  const providerNames = new Map(providers.map(({ id, name }) => [id, name]));
  const orders = new Map(rows.map((row) => [row.number, offeredOf(row, { replaced, providerNames })]));
  return numbers.flatMap((number) => orders.get(number) ?? []);
};

export const loadOfferedOrder = async (tx: Tx, number: string): Promise<OfferedOrder | null> =>
  (await loadOfferedOrders(tx, [number]))[0] ?? null;
