import { demandOrder } from "@/lib/data/order/demand-order";
import { insertRollAgreement } from "@/lib/data/roll/insert-agreement";
import { openRolls } from "@/lib/data/roll/open-rolls";
import { eventOf } from "@/lib/domain/audit/define-event";
import { orderEvents } from "@/lib/domain/order/events";
import { AgreeRollInput, decideAgreeRoll } from "@/lib/domain/order/roll-agreement";
import { rollName } from "@/lib/domain/order/roll-ends";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** The customer agrees that of a roll one end is reported alone: the certificate says so, and by what. */
export const agreeRoll = defineOperation({
  name: "order.agree-roll",
  permission: "order.record",
  input: AgreeRollInput,
  perform: async ({ actor, now, tx }, { number, lot, roll, agreedWith, text }) => {
    const order = await demandOrder(tx, number);
    const open = await openRolls(tx, order);
    const agreed = open.filter(({ agreement }) => agreement !== null);
    demand(decideAgreeRoll(order.state, open, agreed, { lot, roll }));
    await insertRollAgreement(tx, {
      ...{ orderId: order.id, customerId: order.customerId, lot, roll, agreedWith, text },
      ...{ recordedById: personIdOf(actor), recordedAt: now },
    });
    const name = rollName({ lot, roll });
    return {
      value: { number, name },
      events: [eventOf(orderEvents.rollAgreed, order.id, { number, roll: name })],
    };
  },
});
