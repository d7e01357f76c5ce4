import { demandOrder } from "@/lib/data/order/demand-order";
import { providerChoices } from "@/lib/data/order/provider-choices";
import { saveAmendedOrder } from "@/lib/data/order/write-order";
import { eventOf } from "@/lib/domain/audit/define-event";
import { orderEvents } from "@/lib/domain/order/events";
import { decidePastDay } from "@/lib/domain/order/past-day";
import { AmendOrderInput } from "@/lib/domain/order/schema";
import { decideSubcontracting } from "@/lib/domain/order/subcontracting";
import { decideAmendment } from "@/lib/domain/order/transitions";
import { demand } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** Changes the terms and lines of an order that is not accepted yet. */
export const amendOrder = defineOperation({
  name: "order.amend",
  permission: "order.record",
  input: AmendOrderInput,
  perform: async ({ now, tx }, input) => {
    const order = await demandOrder(tx, input.number);
    demand(decideAmendment(order.state));
    demand(decidePastDay("decisionRuleAgreedOn", input.decisionRuleAgreedOn, now, "the rule was agreed"));
    demand(decideSubcontracting(input.lines, await providerChoices(tx, now)));
    await saveAmendedOrder(tx, { ...order, version: input.version }, input);
    const event = eventOf(orderEvents.amended, order.id, {
      number: order.number,
      version: input.version + 1,
      lines: input.lines.length,
      quantity: input.lines.reduce((sum, line) => sum + line.quantity, 0),
    });
    return { value: { number: order.number }, events: [event] };
  },
});
