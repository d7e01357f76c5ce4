import type { Tx } from "@/lib/data/in-scope";
import { loadCurrentRevision } from "@/lib/data/procedure/procedure-store";
import { loadBenches } from "@/lib/data/run/load-benches";
import { loadScopeLines } from "@/lib/data/scope/scope-store";
import { isoDay } from "@/lib/domain/calibration/due";
import { expectedWithin, setpointScope } from "@/lib/domain/order/against-scope";
import { lineDecidability } from "@/lib/domain/order/decidability";
import { expectedUncertainty } from "@/lib/domain/order/expected-uncertainty";
import { revisionName } from "@/lib/domain/procedure/types";
import type { OfferedPoint } from "@/lib/domain/quotation/compose-offer";
import type { OfferedOrder } from "@/lib/domain/quotation/offered-order";
import { readBudgetInputs } from "@/lib/domain/run/budget-inputs";
import { decisionRuleOf } from "@/lib/domain/run/decision-rule-of";
import { scopeInForce } from "@/lib/domain/scope/scope-in-force";

/** What can be said today at each setpoint of an order, and by which procedure it would be measured. */
export const loadOfferedPoints = async (
  tx: Tx,
  order: OfferedOrder,
  now: Date,
): Promise<{ readonly points: readonly OfferedPoint[]; readonly procedure: string | null }> => {
  const procedure = await loadCurrentRevision(tx, "tube-furnace");
  const benches = procedure ? await loadBenches(tx, readBudgetInputs(procedure.budgetInputs), now) : [];
  const rule = decisionRuleOf(order);
  const scope = scopeInForce(await loadScopeLines(tx), { day: isoDay(now), moment: now });
  const points = order.lines.flatMap((line) => {
    const expectedAt = (celsius: number) => {
      const asked = { ...line, celsius };
      return expectedWithin(scope, asked, expectedUncertainty(benches, asked));
    };
    return lineDecidability(line, rule, expectedAt).map((point, index) => ({
      ...point,
      scope: setpointScope(scope, { ...line, celsius: line.setpoints[index]?.celsius ?? Number.NaN }),
    }));
  });
  return { points, procedure: procedure && revisionName(procedure) };
};
