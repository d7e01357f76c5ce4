import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { loadWaitingOrders } from "@/lib/data/promise/plan-store";
import { proposeFor } from "@/lib/data/promise/propose";
import { agreeByLink } from "@/lib/operations/agreement/agree-by-link";
import { recordOrder } from "@/lib/operations/order/record";
import { recordPrice } from "@/lib/operations/price/record";
import { givePromise } from "@/lib/operations/promise/give";
import { makeQuotation } from "@/lib/operations/quotation/make";
import { ship } from "@/lib/operations/shipment/ship";
import type { Cast } from "./people";
import type { Teller } from "./teller";

/** Where the demonstration is reached unless told otherwise. */
const publicUrl = "http://127.0.0.1:3000";
const laboratory = { kind: "laboratory" } as const;

/** An invented list: what such work costs anywhere is not to be learned from it. */
const prices = [
  ["calibration", "Calibration point", "point", "", "18.50"],
  ["calibration", "Calibration point, type S", "point", "S", "24.00"],
  ["calibration", "Set-up and certificate", "sensor", "", "46.00"],
  ["second-set", "Second set of results", "sensor", "", "60.00"],
  ["anneal", "Annealing", "sensor", "", "35.00"],
  ["correction-table", "Table of corrections", "sensor", "", "12.00"],
  ["coefficients", "Coefficients of the deviation function", "sensor", "", "12.00"],
  ["budget", "Uncertainty budget on the certificate", "line", "", "20.00"],
  ["evidence", "Evidence file", "line", "", "15.00"],
  ["express", "Express", "order", "", "150.00"],
  ["subcontracted", "Handling of subcontracted work", "line", "", "55.00"],
  ["minimum-order", "Minimum order", "order", "", "180.00"],
] as const;

const tellPrices = async ({ tell, at, day }: Teller, { desk }: Cast): Promise<void> => {
  for (const [key, title, per, typeLetter, amount] of prices)
    await tell(recordPrice, desk, at(90), { key, title, per, typeLetter, amount, validFrom: day(90) });
};

/** One offer that was agreed to by its link, and one that still waits for its answer. */
const tellOffers = async ({ tell, at, day }: Teller, { desk, customers }: Cast): Promise<void> => {
  const { number } = await tell(recordOrder, desk, at(4, "09:30"), {
    customerId: customers.brandt,
    decisionRule: "guarded",
    guardBandRatio: "1",
    lines: [
      {
        typeLetter: "K",
        construction: "Mineral-insulated, 3 mm, alloy sheath, 600 mm",
        protection: "metal-sheath",
        quantity: "6",
        setpoints: "300 600 900 1000",
        tolerance: "1",
        temperatureUnit: "C",
      },
    ],
  });
  const offer = { number, validUntil: day(-40), publicUrl };
  const agreed = await tell(makeQuotation, desk, at(4, "10:05"), offer);
  const { contentHash } = await inScope(laboratory, (tx) =>
    tx.quotation.findUniqueOrThrow({ where: { id: agreed.id }, select: { contentHash: true } }),
  );
  await tell(agreeByLink, { kind: "system", name: "link" }, at(3, "13:20"), {
    ...{ token: agreed.token, name: "Ines Höfle", answer: "agreed", purchaseOrder: "PO-99187" },
    contentHash: hex(contentHash),
  });
  const waiting = await inScope(laboratory, (tx) =>
    tx.order.findFirstOrThrow({ where: { purchaseOrder: "OB/3402" }, select: { number: true } }),
  );
  await tell(makeQuotation, desk, at(1, "16:10"), { ...offer, number: waiting.number });
};

/** A day for the order that waits longest, from the load of the furnace. */
const tellPromise = async ({ tell, at }: Teller, { desk }: Cast): Promise<void> => {
  const now = at(0, "00:01");
  const found = await inScope(laboratory, async (tx) => {
    const [first] = await loadWaitingOrders(tx);
    const order = first && (await tx.order.findUniqueOrThrow({ where: { number: first.number } }));
    return order && { number: order.number, ...(await proposeFor(tx, order, null, now)) };
  });
  if (found?.proposal.kind !== "proposed") throw new Error("an order of the demonstration waits for a day");
  const { number, shown, proposal } = found;
  await tell(givePromise, desk, now, { number, shown, promisedOn: proposal.promisedOn });
};

/** One of three certified sensors goes back first; the others stay for the next parcel. */
const tellParcel = async ({ tell, at }: Teller, { desk }: Cast): Promise<void> => {
  const sensor = await inScope(laboratory, (tx) =>
    tx.sensor.findFirstOrThrow({
      where: { serial: "HX-S-0093" },
      select: { tag: true, line: { select: { order: { select: { number: true } } } } },
    }),
  );
  await tell(ship, desk, at(1, "16:40"), {
    ...{ number: sensor.line.order.number, tags: [sensor.tag], publicUrl },
    ...{ handedOver: "carrier", carrier: "Invented Parcels", reference: "IP 0093 41" },
  });
};

/** The commercial side: prices, offers, a promised day, and a part of an order on its way back. */
export const tellCommerce = async (teller: Teller, cast: Cast): Promise<void> => {
  await tellPrices(teller, cast);
  await tellOffers(teller, cast);
  await tellPromise(teller, cast);
  await tellParcel(teller, cast);
};
