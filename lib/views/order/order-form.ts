import { loadOrder } from "@/lib/data/order/load-order";
import type { Order } from "@/lib/domain/order/types";
import { draftOfUse } from "@/lib/domain/order/use-terms";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "../view";

/** Whose order it may be. */
export const orderCustomersView = (actor: Actor) =>
  answer(actor, "order.record", (tx) =>
    tx.customer.findMany({ orderBy: { name: "asc" }, select: { id: true, name: true } }),
  );

const fieldsOf = (order: Order) => ({
  number: order.number,
  version: order.version,
  state: order.state,
  purchaseOrder: order.purchaseOrder ?? "",
  decisionRule: order.decisionRule,
  guardBandRatio: order.guardBandRatio === null ? "" : String(order.guardBandRatio),
  falseAcceptancePercent: order.falseAcceptancePercent === null ? "" : String(order.falseAcceptancePercent),
  decisionRuleAgreedBy: order.decisionRuleAgreedBy ?? "",
  decisionRuleAgreedOn: order.decisionRuleAgreedOn ?? "",
  uncertaintyDigits: String(order.uncertaintyDigits),
  note: order.note,
  lines: order.lines.map((line) => ({
    typeLetter: line.typeLetter as string,
    construction: line.construction,
    protection: line.protection as string,
    quantity: String(line.quantity),
    temperatureUnit: line.temperatureUnit as string,
    setpoints: line.setpoints.map(({ typed }) => typed).join("  "),
    tolerance: line.tolerance as string,
    ownLimit: line.ownLimit ? String(line.ownLimit) : "",
    ...draftOfUse(line.useTerms, line.temperatureUnit),
  })),
});

/** An order as its form shows it, each setpoint as it was typed. */
export const orderFormView = (actor: Actor, number: string) =>
  answer(actor, "order.record", async (tx) => {
    const order = found(await loadOrder(tx, number));
    const customer = await tx.customer.findUniqueOrThrow({
      where: { id: order.customerId },
      select: { name: true },
    });
    return { ...fieldsOf(order), customer: customer.name };
  });
