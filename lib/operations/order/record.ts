import { nextNumber } from "@/lib/data/number/next-number";
import { hasCustomer } from "@/lib/data/order/has-customer";
import { providerChoices } from "@/lib/data/order/provider-choices";
import { insertOrder } from "@/lib/data/order/write-order";
import { eventOf } from "@/lib/domain/audit/define-event";
import { orderEvents } from "@/lib/domain/order/events";
import { decidePastDay } from "@/lib/domain/order/past-day";
import { RecordOrderInput } from "@/lib/domain/order/schema";
import { decideSubcontracting } from "@/lib/domain/order/subcontracting";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** The front desk writes an order down, with its lines. It binds nobody until it is accepted. */
export const recordOrder = defineOperation({
  name: "order.record",
  permission: "order.record",
  input: RecordOrderInput,
  perform: async ({ actor, now, tx }, input) => {
    demand(decidePastDay("decisionRuleAgreedOn", input.decisionRuleAgreedOn, now, "the rule was agreed"));
    const { customerId } = input;
    if (!(await hasCustomer(tx, customerId)))
      throw new Refused({
        code: "invalid",
        message: "This customer is not here. Nothing was stored; what you typed is still here.",
        fields: { customerId: "Choose a customer from the list, or record the customer first." },
      });
    demand(decideSubcontracting(input.lines, await providerChoices(tx, now)));
    const year = now.getUTCFullYear();
    const number = `O-${year}-${String(await nextNumber(tx, `order-${year}`)).padStart(4, "0")}`;
    const recordedById = personIdOf(actor);
    const orderId = await insertOrder(tx, {
      number,
      customerId,
      draft: input,
      recordedById,
      recordedAt: now,
    });
    const quantity = input.lines.reduce((sum, line) => sum + line.quantity, 0);
    const event = eventOf(orderEvents.recorded, orderId, {
      number,
      customerId,
      lines: input.lines.length,
      quantity,
    });
    return { value: { orderId, number }, events: [event] };
  },
});
