import { storedTolerance } from "@/lib/domain/order/asked-tolerance";
import { ruleFigures } from "@/lib/domain/order/rule-figures";
import type { OrderDraft, OrderLineDraft } from "@/lib/domain/order/schema";
import type { Setpoint } from "@/lib/domain/order/setpoint";
import type { Tx } from "../in-scope";

/** What an order says, as columns. */
export const orderColumns = (draft: OrderDraft) => ({
  purchaseOrder: draft.purchaseOrder || null,
  decisionRule: draft.decisionRule,
  ...ruleFigures(draft),
  decisionRuleAgreedBy: draft.decisionRuleAgreedBy || null,
  decisionRuleAgreedOn: draft.decisionRuleAgreedOn ? new Date(draft.decisionRuleAgreedOn) : null,
  uncertaintyDigits: draft.uncertaintyDigits,
  note: draft.note,
  urgency: draft.urgency,
  ruleSet: draft.ruleSet,
});

export const lineColumns = (line: OrderLineDraft) => ({
  typeLetter: line.typeLetter,
  construction: line.construction,
  protection: line.protection,
  quantity: line.quantity,
  ...storedTolerance(line),
  temperatureUnit: line.temperatureUnit,
  ...line.useTerms,
  options: JSON.stringify(line.options),
  ...line.marks,
});

export const insertSetpoints = async (
  tx: Tx,
  line: { readonly id: string; readonly customerId: string },
  setpoints: readonly Setpoint[],
): Promise<void> => {
  await tx.orderSetpoint.createMany({
    data: setpoints.map((setpoint, at) => ({
      ...setpoint,
      orderLineId: line.id,
      customerId: line.customerId,
      position: at + 1,
    })),
  });
};
