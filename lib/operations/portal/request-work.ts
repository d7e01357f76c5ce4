import type { z } from "zod";
import { nextNumber } from "@/lib/data/number/next-number";
import { keptInvoiceAddress } from "@/lib/data/order/copy-order";
import { loadOrder } from "@/lib/data/order/load-order";
import { loadSince } from "@/lib/data/order/load-since";
import { insertOrder } from "@/lib/data/order/write-order";
import { loadAddress } from "@/lib/data/portal/address-store";
import { loadOfferedOrder } from "@/lib/data/quotation/load-offered-order";
import { eventOf } from "@/lib/domain/audit/define-event";
import { changesSince } from "@/lib/domain/order/changes-since";
import { orderEvents } from "@/lib/domain/order/events";
import { decideRepeatable } from "@/lib/domain/order/repeatable";
import { type OrderDraft, RecordOrderInput } from "@/lib/domain/order/schema";
import type { Order } from "@/lib/domain/order/types";
import { demand, Refused } from "@/lib/domain/refusal";
import { withRepeatedTerms } from "@/lib/domain/request/repeated-terms";
import { PortalRequestInput } from "@/lib/domain/request/schema";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import type { OperationContext } from "../operation";
import { defineOperation } from "../operation";

type Request = z.output<typeof PortalRequestInput>;

const notStored = (fields: Readonly<Record<string, string>>) =>
  new Refused({
    code: "invalid",
    message: "Some fields need another look. Nothing was sent; what you typed is still here.",
    fields,
  });

/** The desk's own judgement, its fields named as they are on the request: "kinds.0.quantity". */
const draftOf = (customerId: string, { kinds, wishes, urgency, purchaseOrder }: Request) => {
  const draft = RecordOrderInput.safeParse({
    customerId,
    purchaseOrder,
    urgency,
    note: wishes,
    lines: kinds,
  });
  if (draft.success) return draft.data;
  throw notStored(
    Object.fromEntries(
      draft.error.issues
        .toReversed()
        .map(({ path, message }) => [path.join(".").replace(/^lines\b/, "kinds"), message]),
    ),
  );
};

const deliveryAddress = async (
  { tx }: OperationContext,
  customerId: string,
  id: string,
): Promise<string | null> => {
  if (id === "") return null;
  const address = await loadAddress(tx, id);
  // Another customer's, one out of use and none at all look the same.
  if (!address || address.customerId !== customerId || !address.active || address.kind === "invoice")
    throw notStored({ deliveryAddressId: "Choose an address from the list." });
  return address.id;
};

/** The order that is asked for once more, their own; null where the work is new. */
const repeatedOrder = async (
  { tx }: OperationContext,
  customerId: string,
  number: string,
): Promise<Order | null> => {
  if (number === "") return null;
  const order = await loadOrder(tx, number);
  return demand(decideRepeatable(order?.customerId === customerId ? order : null));
};

const keptOf = async ({ tx }: OperationContext, { id }: Order) => ({
  repeatsOrderId: id,
  invoiceAddressId: await keptInvoiceAddress(tx, id),
});

/** The rule set is overlaid, not judged: what it asks of each line is for the desk to fill in when it takes over. */
const withTerms = (draft: OrderDraft, repeated: Order | null, { ruleSet }: Request): OrderDraft => ({
  ...(repeated ? withRepeatedTerms(draft, repeated) : draft),
  ...(ruleSet ? { ruleSet } : {}),
});

const repeatedEvent = async (
  { tx, now }: OperationContext,
  orderId: string,
  pair: readonly [string, string],
) => {
  const [number, repeats] = pair;
  const offered = await loadOfferedOrder(tx, repeats);
  const changes = offered ? [...changesSince(await loadSince(tx, offered, now))] : [];
  return eventOf(orderEvents.repeated, orderId, { number, repeats, changes });
};

/** A customer asks for work. It binds nobody: the laboratory looks at it, answers, and makes an order of it (7.1). */
export const requestWorkInPortal = defineOperation({
  name: "portal/request-work",
  permission: "portal.order",
  scope: "laboratory",
  input: PortalRequestInput,
  perform: async (context, request) => {
    const { actor, now, tx } = context;
    const customerId = customerIdOf(actor);
    const repeated = await repeatedOrder(context, customerId, request.repeats);
    const draft = withTerms(draftOf(customerId, request), repeated, request);
    const deliveryAddressId = await deliveryAddress(context, customerId, request.deliveryAddressId);
    const year = now.getUTCFullYear();
    const number = `O-${year}-${String(await nextNumber(tx, `order-${year}`)).padStart(4, "0")}`;
    const orderId = await insertOrder(tx, {
      ...{ number, customerId, draft, recordedById: personIdOf(actor), recordedAt: now },
      came: {
        state: "requested",
        origin: repeated ? "repeat" : "portal",
        deliveryAddressId,
        ...(repeated ? await keptOf(context, repeated) : {}),
      },
    });
    const event = eventOf(orderEvents.requested, orderId, {
      ...{ number, customerId, origin: "portal" as const, lines: draft.lines.length },
      quantity: draft.lines.reduce((sum, line) => sum + line.quantity, 0),
    });
    const events = repeated
      ? ([event, await repeatedEvent(context, orderId, [number, repeated.number])] as const)
      : ([event] as const);
    return { value: { number }, events };
  },
});
