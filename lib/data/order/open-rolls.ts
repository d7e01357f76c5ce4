import { rollsWithOneEnd } from "@/lib/domain/order/rule-set";
import type { Order } from "@/lib/domain/order/types";
import { readBuild } from "@/lib/domain/sensor/build";
import type { Tx } from "../in-scope";

/** Rolls of an audited order of which one end alone is here; none under no rule set. */
export const openRolls = async (tx: Tx, order: Pick<Order, "id" | "ruleSet">): Promise<readonly string[]> => {
  if (order.ruleSet === "none") return [];
  const rows = await tx.sensor.findMany({
    where: { line: { orderId: order.id } },
    select: { build: true },
    orderBy: { tag: "asc" },
  });
  return rollsWithOneEnd(rows.map(({ build }) => readBuild(build)));
};
