import { loadOrder } from "@/lib/data/order/load-order";
import { loadCurrentRevision } from "@/lib/data/procedure/procedure-store";
import { loadBenches } from "@/lib/data/run/load-benches";
import { lineDecidability } from "@/lib/domain/order/decidability";
import { expectedUncertainty } from "@/lib/domain/order/expected-uncertainty";
import { readBudgetInputs } from "@/lib/domain/run/budget-inputs";
import { decisionRuleOf } from "@/lib/domain/run/decision-rule-of";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "../view";

/**
 * What could be said at each setpoint of an order with the U that today's standards and the laboratory's procedure would
 * give. Nothing of it is stored: it is asked again each time the order is looked at.
 */
export const orderDecidabilityView = (actor: Actor, number: string, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const order = found(await loadOrder(tx, number));
    const procedure = await loadCurrentRevision(tx, "tube-furnace");
    const benches = procedure ? await loadBenches(tx, readBudgetInputs(procedure.budgetInputs), now) : [];
    const rule = decisionRuleOf(order);
    return order.lines.flatMap((line) =>
      lineDecidability(line, rule, (celsius) => expectedUncertainty(benches, { ...line, celsius })),
    );
  });

export type OrderDecidability = Awaited<ReturnType<typeof orderDecidabilityView>>;
