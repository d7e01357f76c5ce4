import type { Tx } from "@/lib/data/in-scope";
import { loadInvoiceAddress } from "@/lib/data/invoicing/load-invoice-address";
import { loadPrices } from "@/lib/data/price/price-store";
import { countedReports } from "@/lib/data/provider/report-store";
import { loadAgreedOffer } from "@/lib/data/quotation/load-agreed-offer";
import { loadOfferedOrder } from "@/lib/data/quotation/load-offered-order";
import { sha256Hex } from "@/lib/data/sha256-hex";
import { uninvoicedOrders } from "@/lib/data/sql/uninvoiced-orders";
import { isoDay } from "@/lib/domain/calibration/due";
import { chargeKey, chargesOf } from "@/lib/domain/invoicing/charges";
import type { InvoicedOrder } from "@/lib/domain/invoicing/compose-file";
import { cutPage, type Page, pricedPageSize, type Turn } from "@/lib/domain/list/page";
import { composePrice, type PriceLine } from "@/lib/domain/price/compose-price";
import type { Price } from "@/lib/domain/price/price";
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
const priceOf = async (tx: Tx, order: OfferedOrder, list: readonly Price[], today: string) => {
  const agreed = await loadAgreedOffer(tx, order.id, sha256Hex(termsText(order)));
  if (agreed?.price) return { lines: agreed.price.lines as readonly PriceLine[], missing: [] };
  const on = order.acceptedAt ? isoDay(order.acceptedAt) : today;
  const first = composePrice(chargedOrder(order), list, on);
  // A list that began after the order: its first prices are the only ones there are.
  return first.missing.length === 0 ? first : composePrice(chargedOrder(order), list, today);
};

const finishedOf = async (tx: Tx, order: OfferedOrder): Promise<ReadonlySet<string>> => {
  const ids = order.lines
    .flatMap(({ sensors }) => sensors)
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

const chargeableOf = async (
  tx: Tx,
  order: OfferedOrder,
  list: readonly Price[],
  today: string,
): Promise<Chargeable> => {
  const price = await priceOf(tx, order, list, today);
  const whose = await loadInvoiceAddress(tx, order.id);
  if (price.missing.length > 0)
    return { kind: "unpriced", number: order.number, customer: whose.customer, missing: price.missing };
  const finished = await finishedOf(tx, order);
  const before = await tx.invoicingRow.findMany({
    where: { orderId: order.id },
    select: { sensorId: true, key: true },
  });
  const charges = chargesOf({
    id: order.id,
    number: order.number,
    price: price.lines,
    lines: order.lines.map(({ position, quantity, typeLetter, sensors }) => ({
      ...{ position, quantity, typeLetter },
      finished: sensors.filter(({ id }) => finished.has(id)),
    })),
    handedOver: new Set(before.map(({ sensorId, key }) => chargeKey(sensorId, key))),
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
  const list = await loadPrices(tx);
  const found: Chargeable[] = [];
  for (const { number } of numbers) {
    const order = await loadOfferedOrder(tx, number);
    if (order) found.push(await chargeableOf(tx, order, list, isoDay(now)));
  }
  return found;
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
