import type { OrderDraft, OrderLineDraft } from "@/lib/domain/order/schema";
import type { OrderState } from "@/lib/domain/order/transitions";
import type { Tx } from "../in-scope";
import { demandSaved } from "../versioned";
import { insertSetpoints, lineColumns, orderColumns } from "./order-columns";

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
    await insertSetpoints(tx, { id, customerId }, line.setpoints);
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
    readonly invoiceAddressId?: string | null;
  };
};

/** Stores a new order with its lines; answers its id. */
export const insertOrder = async (tx: Tx, order: NewOrder): Promise<string> => {
  const { number, customerId, draft, recordedById, recordedAt, came } = order;
  const { id } = await tx.order.create({
    data: { ...orderColumns(draft), number, customerId, recordedById, recordedAt, ...came },
    select: { id: true },
  });
  await insertLines(tx, id, customerId, draft.lines);
  return id;
};

/**
 * Terms and lines anew, for an order nobody has accepted: no sensor stands on its lines yet. One that was requested is
 * recorded with it: the desk has taken it over.
 */
export const saveAmendedOrder = async (
  tx: Tx,
  order: {
    readonly id: string;
    readonly customerId: string;
    readonly version: number;
    readonly state: OrderState;
  },
  draft: OrderDraft,
): Promise<void> => {
  if (order.state !== "recorded" && order.state !== "requested")
    throw new Error(`No order that is ${order.state} is amended`);
  demandSaved(
    await tx.order.updateMany({
      where: { id: order.id, version: order.version, state: order.state },
      data: { ...orderColumns(draft), state: "recorded", version: { increment: 1 } },
    }),
  );
  await tx.orderSetpoint.deleteMany({ where: { line: { orderId: order.id } } });
  await tx.orderLine.deleteMany({ where: { orderId: order.id } });
  await insertLines(tx, order.id, order.customerId, draft.lines);
};
