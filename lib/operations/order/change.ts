import type { z } from "zod";
import type { Tx } from "@/lib/data/in-scope";
import { capabilitySources } from "@/lib/data/order/capability-sources";
import { insertChange, openRunsWith } from "@/lib/data/order/change-store";
import { completeFinishedOrder } from "@/lib/data/order/complete-finished-order";
import { demandOrder } from "@/lib/data/order/demand-order";
import { loadDifferences } from "@/lib/data/order/difference-store";
import { lockOrderSensors } from "@/lib/data/order/lock-order-sensors";
import { providerChoices } from "@/lib/data/order/provider-choices";
import { insertReview } from "@/lib/data/order/review-store";
import { saveChangedOrder } from "@/lib/data/order/save-changed-order";
import { eventOf } from "@/lib/domain/audit/define-event";
import { orderCapability, undecidablePoints } from "@/lib/domain/order/capability";
import { ChangeOrderInput } from "@/lib/domain/order/change-schema";
import { decideChangedReview } from "@/lib/domain/order/contract-review";
import { decideChange } from "@/lib/domain/order/decide-change";
import { decideDifferencesSettled } from "@/lib/domain/order/difference";
import { orderEvents } from "@/lib/domain/order/events";
import { orderSnapshot, snapshotDifferences } from "@/lib/domain/order/order-snapshot";
import { decidePastDay } from "@/lib/domain/order/past-day";
import { composeReviewAnswers, decideReviewAnswers } from "@/lib/domain/order/review";
import type { OrderLineDraft } from "@/lib/domain/order/schema";
import { decideSubcontracting } from "@/lib/domain/order/subcontracting";
import type { Order } from "@/lib/domain/order/types";
import { demand } from "@/lib/domain/refusal";
import { decisionRuleOf } from "@/lib/domain/run/decision-rule-of";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

type Changed = z.output<typeof ChangeOrderInput> & {
  readonly lines: readonly (OrderLineDraft & { readonly position: number })[];
};

/** As it is to become, it holds what the order held at acceptance; answers what the customer was told, and what can be done. */
const reviewAgain = async (tx: Tx, order: Order, changed: Changed, now: Date) => {
  demand(decideReviewAnswers(changed.lines, changed));
  demand(decideDifferencesSettled(await loadDifferences(tx, order.id), "change it"));
  const sources = await capabilitySources(tx, now);
  const reviewed = { ...changed, state: order.state };
  const capability = orderCapability(changed.lines, decisionRuleOf(changed), sources);
  const means = { furnaces: sources.furnaces, points: capability };
  const { told } = demand(decideChangedReview(reviewed, order, means, changed.toldCustomer));
  return { told, capability };
};

/** Changes an accepted order after another review; runs under way with its sensors stand still until it is acknowledged. */
export const changeOrder = defineOperation({
  name: "order.change",
  permission: "order.accept",
  input: ChangeOrderInput,
  perform: async ({ actor, now, tx }, input) => {
    const { certified, sensorIds } = await lockOrderSensors(tx, input.number);
    const order = await demandOrder(tx, input.number);
    const providers = await providerChoices(tx, now);
    const stored = { ...order, lines: order.lines.map((line) => ({ ...line, lineId: line.id })) };
    const [before, after] = [orderSnapshot(stored, providers), orderSnapshot(input, providers)];
    const differences = snapshotDifferences(before, after);
    demand(decideChange(order, input, certified, differences));
    demand(decidePastDay("decisionRuleAgreedOn", input.decisionRuleAgreedOn, now, "the rule was agreed"));
    demand(decideSubcontracting(input.lines, providers));
    const lines = input.lines.map((line, index) => ({ ...line, position: index + 1 }));
    const { told, capability } = await reviewAgain(tx, order, { ...input, lines }, now);
    const who = { orderId: order.id, customerId: order.customerId };
    const changedById = personIdOf(actor);
    const change = await insertChange(tx, {
      ...who,
      reason: input.reason,
      agreedWith: input.agreedWith,
      before,
      after,
      changedById,
      changedAt: now,
    });
    await saveChangedOrder(tx, { ...order, version: input.version }, input);
    const review = await insertReview(tx, {
      ...who,
      occasion: "change",
      answers: composeReviewAnswers(input, told),
      capability,
      orderVersion: input.version + 1,
      reviewedById: changedById,
      reviewedAt: now,
    });
    const event = eventOf(orderEvents.changed, order.id, {
      number: order.number,
      version: input.version + 1,
      change,
      review,
      differences: differences.length,
      pausedRuns: [...(await openRunsWith(tx, sensorIds))],
      undecidable: [...undecidablePoints(capability)],
    });
    // Fewer ordered than before may be all there is: the last of them may be done already.
    const completed = await completeFinishedOrder(tx, order.number);
    return { value: { number: order.number, change }, events: [event, ...completed] };
  },
});
