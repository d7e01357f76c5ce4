import { loadDifferences } from "@/lib/data/order/difference-store";
import { loadOrder } from "@/lib/data/order/load-order";
import { providerChoices } from "@/lib/data/order/provider-choices";
import { repeatedNumber } from "@/lib/data/order/repeated-number";
import { draftOfOptions } from "@/lib/domain/order/line-options-draft";
import { orderSnapshot } from "@/lib/domain/order/order-snapshot";
import { requestText } from "@/lib/domain/order/request-text";
import type { ProviderChoice } from "@/lib/domain/order/subcontracting";
import type { Order } from "@/lib/domain/order/types";
import { draftOfUse } from "@/lib/domain/order/use-terms";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "../view";

/** To whom a line may go; one that was named before and is approved no longer stays in sight, said so. */
const providersOf = (all: readonly ProviderChoice[], named: readonly (string | null)[]) =>
  all.flatMap(({ id, name, isApproved }) =>
    isApproved ? [{ id, name }] : named.includes(id) ? [{ id, name: `${name} (not approved today)` }] : [],
  );

/** Whose order it may be, and to whom its lines may go. */
export const newOrderView = (actor: Actor, now: Date) =>
  answer(actor, "order.record", async (tx) => ({
    customers: await tx.customer.findMany({ orderBy: { name: "asc" }, select: { id: true, name: true } }),
    providers: providersOf(await providerChoices(tx, now), []),
  }));

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
  urgency: order.urgency as string,
  ruleSet: order.ruleSet as string,
  lines: order.lines.map((line) => ({
    lineId: line.id,
    typeLetter: line.typeLetter as string,
    construction: line.construction,
    protection: line.protection as string,
    quantity: String(line.quantity),
    temperatureUnit: line.temperatureUnit as string,
    setpoints: line.setpoints.map(({ typed }) => typed).join("  "),
    tolerance: line.tolerance as string,
    ownLimit: line.ownLimit ? String(line.ownLimit) : "",
    ...draftOfUse(line.useTerms, line.temperatureUnit),
    ...draftOfOptions(line.options, line.marks),
  })),
});

/** An order as its form shows it, each setpoint as it was typed. */
export const orderFormView = (actor: Actor, number: string, now: Date) =>
  answer(actor, "order.record", async (tx) => {
    const order = found(await loadOrder(tx, number));
    const customer = await tx.customer.findUniqueOrThrow({
      where: { id: order.customerId },
      select: { name: true },
    });
    const providers = await providerChoices(tx, now);
    const stored = { ...order, lines: order.lines.map((line) => ({ ...line, lineId: line.id })) };
    const repeats = await repeatedNumber(tx, order.id);
    const named = order.lines.map(({ marks }) => marks.providerId);
    return {
      ...fieldsOf(order),
      customer: customer.name,
      openDifferences: (await loadDifferences(tx, order.id)).filter(({ isSettled }) => !isSettled).length,
      providers: providersOf(providers, named),
      requested: order.state === "requested" ? requestText(orderSnapshot(stored, providers), repeats) : "",
      repeats,
    };
  });
