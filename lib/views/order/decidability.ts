import { capabilitySources } from "@/lib/data/order/capability-sources";
import { loadOrder } from "@/lib/data/order/load-order";
import { orderCapability } from "@/lib/domain/order/capability";
import { decisionRuleOf } from "@/lib/domain/run/decision-rule-of";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "../view";

/**
 * What could be said at each setpoint of an order with the U that today's standards and the laboratory's procedure would
 * give. It is asked again each time the order is looked at; what was answered when it was accepted is kept by its review.
 */
export const orderDecidabilityView = (actor: Actor, number: string, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const order = found(await loadOrder(tx, number));
    return orderCapability(order.lines, decisionRuleOf(order), await capabilitySources(tx, now));
  });

export type OrderDecidability = Awaited<ReturnType<typeof orderDecidabilityView>>;
