import type { Tx } from "@/lib/data/in-scope";
import { loadInvoiceAddresses } from "@/lib/data/invoicing/load-invoice-addresses";
import { loadPrices } from "@/lib/data/price/price-store";
import { countedReports } from "@/lib/data/provider/report-store";
import { loadAgreedOffers } from "@/lib/data/quotation/load-agreed-offer";
import { loadOfferedOrders } from "@/lib/data/quotation/load-offered-order";
import { sha256Hex } from "@/lib/data/sha256-hex";
import { uninvoicedOrders } from "@/lib/data/sql/uninvoiced-orders";
import { isoDay } from "@/lib/domain/calibration/due";
import { chargeKey, chargesOf } from "@/lib/domain/invoicing/charges";
import type { InvoicedOrder } from "@/lib/domain/invoicing/compose-file";
import { cutPage, type Page, pricedPageSize, type Turn } from "@/lib/domain/list/page";
import { composePrice, type PriceLine } from "@/lib/domain/price/compose-price";
import type { Price } from "@/lib/domain/price/price";
import type { OfferContent } from "@/lib/domain/quotation/content";
import { chargedOrder, type OfferedOrder, termsText } from "@/lib/domain/quotation/offered-order";

/** Orders of one file at most: the next one takes the others. */
const mostOrders = 500;

export type Chargeable =
  | (InvoicedOrder & { readonly kind: "priced"; readonly orderId: string })
  /** Left out, and said: something of it has no price. */
  | {
      readonly kind: "unpriced";
      readonly number: string;
      readonly customer: string;
      readonly missing: readonly string[];
    };

/** As agreed; where nothing was agreed for the work as it stands, by the list of the day it was accepted. */
const priceOf = (
  order: OfferedOrder,
  agreed: OfferContent | undefined,
  list: readonly Price[],
  today: string,
): { readonly lines: readonly PriceLine[]; readonly missing: readonly string[] } => {
  if (agreed?.price) return { lines: agreed.price.lines as readonly PriceLine[], missing: [] };
  const on = order.acceptedAt ? isoDay(order.acceptedAt) : today;
  const first = composePrice(chargedOrder(order), list, on);
  // A list that began after the order: its first prices are the only ones there are.
  return first.missing.length === 0 ? first : composePrice(chargedOrder(order), list, today);
};

/** Of these orders the sensors that have their certificates. */
const loadFinished = async (tx: Tx, orders: readonly OfferedOrder[]): Promise<ReadonlySet<string>> => {
  const ids = orders
    .flatMap(({ lines }) => lines.flatMap(({ sensors }) => sensors))
    .filter(({ state }) => state === "issued" || state === "collected")
    .map(({ id }) => id);
  const own = await tx.certificate.findMany({ where: { sensorId: { in: ids } }, select: { sensorId: true } });
  const parts = await tx.certificatePart.findMany({
    where: { sensorId: { in: ids } },
    select: { sensorId: true },
  });
  const external = await countedReports(tx, ids);
  return new Set([...[...own, ...parts].map(({ sensorId }) => sensorId), ...external.keys()]);
};

/** What is known of all orders of a page together: asked for at once, not order by order. */
const loadKnown = async (tx: Tx, orders: readonly OfferedOrder[]) => {
  const ids = orders.map(({ id }) => id);
  const before = await tx.invoicingRow.findMany({
    where: { orderId: { in: ids } },
    select: { orderId: true, sensorId: true, key: true },
  });
  return {
    list: await loadPrices(tx),
    agreed: await loadAgreedOffers(
      tx,
      orders.map((order) => ({ id: order.id, termsHash: sha256Hex(termsText(order)) })),
    ),
    invoiced: await loadInvoiceAddresses(tx, ids),
    finished: await loadFinished(tx, orders),
    handedOver: (orderId: string): ReadonlySet<string> =>
      new Set(before.flatMap((row) => (row.orderId === orderId ? [chargeKey(row.sensorId, row.key)] : []))),
  };
};

const chargeableOf = (
  order: OfferedOrder,
  known: Awaited<ReturnType<typeof loadKnown>>,
  today: string,
): Chargeable => {
  const price = priceOf(order, known.agreed.get(order.id), known.list, today);
  const whose = known.invoiced.get(order.id) ?? { customer: "", address: "" };
  if (price.missing.length > 0)
    return { kind: "unpriced", number: order.number, customer: whose.customer, missing: price.missing };
  const charges = chargesOf({
    id: order.id,
    number: order.number,
    price: price.lines,
    lines: order.lines.map(({ position, quantity, typeLetter, sensors }) => ({
      ...{ position, quantity, typeLetter },
      finished: sensors.filter(({ id }) => known.finished.has(id)),
    })),
    handedOver: known.handedOver(order.id),
  });
  return {
    kind: "priced",
    orderId: order.id,
    number: order.number,
    ...whose,
    purchaseOrder: order.purchaseOrder ?? "",
    charges,
  };
};

type Priced = Extract<Chargeable, { readonly kind: "priced" }>;

const loadOf = async (
  tx: Tx,
  numbers: readonly { readonly number: string }[],
  now: Date,
): Promise<readonly Chargeable[]> => {
  const orders = await loadOfferedOrders(
    tx,
    numbers.map(({ number }) => number),
  );
  const known = await loadKnown(tx, orders);
  return orders.map((order) => chargeableOf(order, known, isoDay(now)));
};

/** One page of the orders of which something waits to be invoiced, each with its price or with what has none. */
export const loadChargeablePage = async (
  tx: Tx,
  turn: Turn,
  now: Date,
  size = pricedPageSize,
): Promise<Page<Chargeable>> => {
  const numbers = await uninvoicedOrders(tx, turn, size + 1);
  const { rows, next, previous } = cutPage(numbers, turn, ({ number }) => number, size);
  return { rows: await loadOf(tx, rows, now), next, previous };
};

/** What one file hands over: page by page, so that orders without a price in front keep no later one waiting. */
export const loadChargeable = async (
  tx: Tx,
  now: Date,
  size = pricedPageSize,
): Promise<readonly Priced[]> => {
  const found: Priced[] = [];
  let turn: Turn = { kind: "first" };
  while (found.length < mostOrders) {
    const page = await loadChargeablePage(tx, turn, now, size);
    found.push(...page.rows.flatMap((one) => (one.kind === "priced" && one.charges.length > 0 ? [one] : [])));
    if (page.next === null) break;
    turn = { kind: "after", anchor: page.next };
  }
  return found.slice(0, mostOrders);
};
