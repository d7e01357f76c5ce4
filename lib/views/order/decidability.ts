import { loadOrder } from "@/lib/data/order/load-order";
import { loadCurrentRevision } from "@/lib/data/procedure/procedure-store";
import { loadBenches } from "@/lib/data/run/load-benches";
import { loadScopeLines } from "@/lib/data/scope/scope-store";
import { isoDay } from "@/lib/domain/calibration/due";
import { expectedWithin, setpointScope } from "@/lib/domain/order/against-scope";
import { lineDecidability } from "@/lib/domain/order/decidability";
import { expectedUncertainty } from "@/lib/domain/order/expected-uncertainty";
import { readBudgetInputs } from "@/lib/domain/run/budget-inputs";
import { decisionRuleOf } from "@/lib/domain/run/decision-rule-of";
import { scopeInForce } from "@/lib/domain/scope/scope-in-force";
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
    const scope = scopeInForce(await loadScopeLines(tx), { day: isoDay(now), moment: now });
    return order.lines.flatMap((line) => {
      const expectedAt = (celsius: number) => {
        const asked = { ...line, celsius };
        return expectedWithin(scope, asked, expectedUncertainty(benches, asked));
      };
      return lineDecidability(line, rule, expectedAt).map((point, index) => ({
        ...point,
        scope: setpointScope(scope, { ...line, celsius: line.setpoints[index]?.celsius ?? Number.NaN }),
      }));
    });
  });

export type OrderDecidability = Awaited<ReturnType<typeof orderDecidabilityView>>;
