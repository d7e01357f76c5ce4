import { storedTolerance } from "@/lib/domain/order/asked-tolerance";
import type { OrderDraft, OrderLineDraft } from "@/lib/domain/order/schema";
import type { Tx } from "../in-scope";
import { demandSaved } from "../versioned";

const termsOf = (draft: OrderDraft) => ({
  purchaseOrder: draft.purchaseOrder || null,
  decisionRule: draft.decisionRule,
  // Each rule has its own figure; another's, typed and left, is not agreed.
  guardBandRatio:
    draft.decisionRule === "guarded" || draft.decisionRule === "guarded-binary" ? draft.guardBandRatio : null,
  falseAcceptancePercent: draft.decisionRule === "target-risk" ? draft.falseAcceptancePercent : null,
  decisionRuleAgreedBy: draft.decisionRuleAgreedBy || null,
  decisionRuleAgreedOn: draft.decisionRuleAgreedOn ? new Date(draft.decisionRuleAgreedOn) : null,
  uncertaintyDigits: draft.uncertaintyDigits,
  note: draft.note,
  urgency: draft.urgency,
  ruleSet: draft.ruleSet,
});

const lineColumns = (line: OrderLineDraft) => ({
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

const insertLines = async (
  tx: Tx,
  orderId: string,
  customerId: string,
  lines: readonly OrderLineDraft[],
): Promise<void> => {
  for (const [index, line] of lines.entries()) {
    const { id } = await tx.orderLine.create({
      data: {
        orderId,
        customerId,
        position: index + 1,
        ...lineColumns(line),
      },
      select: { id: true },
    });
    await tx.orderSetpoint.createMany({
      data: line.setpoints.map((setpoint, at) => ({
        ...setpoint,
        orderLineId: id,
        customerId,
        position: at + 1,
      })),
    });
  }
};

type NewOrder = {
  readonly number: string;
  readonly customerId: string;
  readonly draft: OrderDraft;
  readonly recordedById: string;
  readonly recordedAt: Date;
  /** How it came, where not from the desk: requested by the customer, or made from an earlier order. */
  readonly came?: {
    readonly state: "requested" | "recorded";
    readonly origin: "portal" | "interface" | "repeat";
    readonly repeatsOrderId?: string;
    /** Of a program: the same key again is the same request. */
    readonly requestKey?: string;
    readonly deliveryAddressId?: string | null;
  };
};

/** Stores a new order with its lines; answers its id. */
export const insertOrder = async (tx: Tx, order: NewOrder): Promise<string> => {
  const { number, customerId, draft, recordedById, recordedAt, came } = order;
  const { id } = await tx.order.create({
    data: { ...termsOf(draft), number, customerId, recordedById, recordedAt, ...came },
    select: { id: true },
  });
  await insertLines(tx, id, customerId, draft.lines);
  return id;
};

/** Terms and lines anew, for an order nobody has accepted: no sensor stands on its lines yet. */
export const saveAmendedOrder = async (
  tx: Tx,
  order: { readonly id: string; readonly customerId: string; readonly version: number },
  draft: OrderDraft,
): Promise<void> => {
  demandSaved(
    await tx.order.updateMany({
      where: { id: order.id, version: order.version, state: "recorded" },
      data: { ...termsOf(draft), version: { increment: 1 } },
    }),
  );
  await tx.orderSetpoint.deleteMany({ where: { line: { orderId: order.id } } });
  await tx.orderLine.deleteMany({ where: { orderId: order.id } });
  await insertLines(tx, order.id, order.customerId, draft.lines);
};
