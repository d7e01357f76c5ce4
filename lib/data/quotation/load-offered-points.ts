import type { Tx } from "@/lib/data/in-scope";
import { capabilitySources } from "@/lib/data/order/capability-sources";
import { loadCurrentRevision } from "@/lib/data/procedure/procedure-store";
import { orderCapability } from "@/lib/domain/order/capability";
import { revisionName } from "@/lib/domain/procedure/types";
import type { OfferedPoint } from "@/lib/domain/quotation/compose-offer";
import type { OfferedOrder } from "@/lib/domain/quotation/offered-order";
import { decisionRuleOf } from "@/lib/domain/run/decision-rule-of";

/** What can be said today at each setpoint of an order, as its review says it, and by which procedure it would be measured. */
export const loadOfferedPoints = async (
  tx: Tx,
  order: OfferedOrder,
  now: Date,
): Promise<{ readonly points: readonly OfferedPoint[]; readonly procedure: string | null }> => {
  const procedure = await loadCurrentRevision(tx, "tube-furnace");
  const points = orderCapability(order.lines, decisionRuleOf(order), await capabilitySources(tx, now));
  return { points, procedure: procedure && revisionName(procedure) };
};
