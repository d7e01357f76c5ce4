import { loadOfferToAnswer } from "@/lib/data/agreement/agreement-store";
import type { Tx } from "@/lib/data/in-scope";
import { capabilitySources } from "@/lib/data/order/capability-sources";
import { demandOrder } from "@/lib/data/order/demand-order";
import { loadDifferences } from "@/lib/data/order/difference-store";
import { insertReview } from "@/lib/data/order/review-store";
import { setOrderState } from "@/lib/data/order/set-order-state";
import { newestQuotationId } from "@/lib/data/quotation/quotation-store";
import { decideAgreement } from "@/lib/domain/agreement/decide-agreement";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { orderCapability, outsideScopePoints, undecidablePoints } from "@/lib/domain/order/capability";
import { decideAcceptance } from "@/lib/domain/order/contract-review";
import { decideDifferencesSettled } from "@/lib/domain/order/difference";
import { orderEvents } from "@/lib/domain/order/events";
import { composeReviewAnswers, decideReviewAnswers } from "@/lib/domain/order/review";
import { AcceptOrderInput } from "@/lib/domain/order/schema";
import { demand } from "@/lib/domain/refusal";
import { decisionRuleOf } from "@/lib/domain/run/decision-rule-of";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** An offer the customer may still answer: acceptance closes it not, and whoever accepts is told. */
const openOfferOf = async (tx: Tx, orderId: string, today: string) => {
  const id = await newestQuotationId(tx, orderId);
  const offer = id && (await loadOfferToAnswer(tx, { id }));
  if (!offer || !decideAgreement(offer, offer, today).ok) return null;
  return { number: offer.number, validUntil: offer.validUntil };
};

/** Contract review (ISO/IEC 17025:2017, 7.1): from here on the order's lines are fixed and its sensors may come. */
export const acceptOrder = defineOperation({
  name: "order.accept",
  permission: "order.accept",
  input: AcceptOrderInput,
  perform: async ({ actor, now, tx }, input) => {
    const order = await demandOrder(tx, input.number);
    const sources = await capabilitySources(tx, now);
    const capability = orderCapability(order.lines, decisionRuleOf(order), sources);
    const means = { furnaces: sources.furnaces, points: capability };
    const { told } = demand(decideAcceptance(order, means, input.toldCustomer));
    demand(decideReviewAnswers(order.lines, input));
    demand(decideDifferencesSettled(await loadDifferences(tx, order.id), "accept"));
    const openOffer = await openOfferOf(tx, order.id, isoDay(now));
    const review = await insertReview(tx, {
      orderId: order.id,
      customerId: order.customerId,
      occasion: "acceptance",
      answers: composeReviewAnswers(input, told),
      capability,
      orderVersion: input.version,
      reviewedById: personIdOf(actor),
      reviewedAt: now,
    });
    // The version the reader saw: what was amended meanwhile was not reviewed.
    await setOrderState(tx, { ...order, version: input.version }, "accepted", {
      acceptedById: personIdOf(actor),
      acceptedAt: now,
    });
    const event = eventOf(orderEvents.accepted, order.id, {
      number: order.number,
      version: input.version + 1,
      requirementsUnderstood: input.requirementsUnderstood,
      capabilityAndResources: input.capabilityAndResources,
      externalProviders: input.externalProviders,
      methodSuitable: input.methodSuitable,
      decisionRule: order.decisionRule,
      guardBandRatio: order.guardBandRatio,
      ...(order.falseAcceptancePercent === null
        ? {}
        : { falseAcceptancePercent: order.falseAcceptancePercent }),
      toldCustomer: [...told],
      review,
      undecidable: [...undecidablePoints(capability)],
      outsideScope: [...outsideScopePoints(capability)],
    });
    return { value: { number: order.number, openOffer }, events: [event] };
  },
});
