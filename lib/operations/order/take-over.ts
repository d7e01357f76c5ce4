import { demandOrder } from "@/lib/data/order/demand-order";
import { insertOrderNote } from "@/lib/data/order/note-store";
import { providerChoices } from "@/lib/data/order/provider-choices";
import { repeatedNumber } from "@/lib/data/order/repeated-number";
import { saveAmendedOrder } from "@/lib/data/order/write-order";
import { eventOf } from "@/lib/domain/audit/define-event";
import { orderEvents } from "@/lib/domain/order/events";
import { orderSnapshot } from "@/lib/domain/order/order-snapshot";
import { decidePastDay } from "@/lib/domain/order/past-day";
import { requestText } from "@/lib/domain/order/request-text";
import { AmendOrderInput } from "@/lib/domain/order/schema";
import { decideSubcontracting } from "@/lib/domain/order/subcontracting";
import { decideTakeOver } from "@/lib/domain/order/transitions";
import { demand } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** The desk writes down what a customer requested; what they wrote stays beside it, word for word. */
export const takeOverOrder = defineOperation({
  name: "order.take-over",
  permission: "order.record",
  input: AmendOrderInput,
  perform: async ({ now, tx }, input) => {
    const order = await demandOrder(tx, input.number);
    demand(decideTakeOver(order.state));
    demand(decidePastDay("decisionRuleAgreedOn", input.decisionRuleAgreedOn, now, "the rule was agreed"));
    const providers = await providerChoices(tx, now);
    demand(decideSubcontracting(input.lines, providers));
    const requested = { ...order, lines: order.lines.map((line) => ({ ...line, lineId: line.id })) };
    await insertOrderNote(tx, {
      orderId: order.id,
      customerId: order.customerId,
      kind: "from-customer",
      text: requestText(orderSnapshot(requested, providers), await repeatedNumber(tx, order.id)),
      isForCustomer: true,
      saidById: order.recordedById,
      saidAt: order.recordedAt,
    });
    await saveAmendedOrder(tx, { ...order, version: input.version }, input);
    const event = eventOf(orderEvents.takenOver, order.id, {
      number: order.number,
      version: input.version + 1,
      lines: input.lines.length,
    });
    return { value: { number: order.number }, events: [event] };
  },
});
