import { isoDay } from "@/lib/domain/calibration/due";
import { setpointScope } from "@/lib/domain/order/against-scope";
import type { Since } from "@/lib/domain/order/changes-since";
import { temperatureUnitLabels } from "@/lib/domain/order/labels";
import { composePrice } from "@/lib/domain/price/compose-price";
import { chargedOrder, type OfferedOrder } from "@/lib/domain/quotation/offered-order";
import { scopeInForce } from "@/lib/domain/scope/scope-in-force";
import type { Tx } from "../in-scope";
import { loadCurrency, loadPrices } from "../price/price-store";
import { loadScopeLines } from "../scope/scope-store";

const procedureOn = async (tx: Tx, moment: Date): Promise<string | null> => {
  const row = await tx.procedureRevision.findFirst({
    where: { procedure: { key: "tube-furnace" }, currentFrom: { lte: moment } },
    orderBy: { currentFrom: "desc" },
    include: { procedure: { select: { title: true } } },
  });
  return row && `${row.procedure.title}, revision ${row.revision}`;
};

/** Procedure, scope and prices as they were when the order was accepted, and as they are. */
export const loadSince = async (tx: Tx, order: OfferedOrder, now: Date): Promise<Since> => {
  const then = order.acceptedAt ?? order.recordedAt;
  const scopes = await loadScopeLines(tx);
  const scopeOn = (moment: Date) => scopeInForce(scopes, { day: isoDay(moment), moment });
  const [scopeThen, scopeNow] = [scopeOn(then), scopeOn(now)];
  const prices = await loadPrices(tx);
  const totalOn = (moment: Date) => composePrice(chargedOrder(order), prices, isoDay(moment)).total;
  return {
    procedure: { before: await procedureOn(tx, then), now: await procedureOn(tx, now) },
    points: order.lines.flatMap((line) =>
      line.setpoints.map(({ typed, celsius }) => ({
        position: line.position,
        setpoint: `${typed} ${temperatureUnitLabels[line.temperatureUnit]}`,
        before: setpointScope(scopeThen, { ...line, celsius }),
        now: setpointScope(scopeNow, { ...line, celsius }),
      })),
    ),
    price: { before: totalOn(then), now: totalOn(now), currency: await loadCurrency(tx) },
  };
};
