import { canonical } from "../audit/canonical";
import type { LineOptions } from "../order/options";
import type { Order, OrderLine } from "../order/types";
import type { ChargedOrder } from "../price/keys";

export type OfferedLine = Omit<OrderLine, "options"> & {
  readonly groupName: string;
  readonly options: LineOptions;
  readonly performedAt: "laboratory" | "customer-site";
  readonly siteAddress: string;
  readonly providerId: string | null;
  readonly providerName: string;
};

/** An order with all that an offer speaks of. */
export type OfferedOrder = Omit<Order, "lines" | "urgency" | "ruleSet"> & {
  readonly urgency: "standard" | "express";
  readonly ruleSet: string;
  readonly promisedOn: string | null;
  readonly lines: readonly OfferedLine[];
};

/** What a price counts. */
export const chargedOrder = ({ urgency, lines }: OfferedOrder): ChargedOrder => ({
  urgency,
  lines: lines.map((line) => ({
    position: line.position,
    typeLetter: line.typeLetter,
    quantity: line.quantity,
    points: line.setpoints.length,
    options: line.options,
    isSubcontracted: line.providerId !== null,
    isOnSite: line.performedAt === "customer-site",
  })),
});

/**
 * What the customer agrees to, as one text: equal texts are the same work at the same terms. Not in it: what changes
 * without the work changing, such as the order's state, its purchase order number, a promised day.
 */
export const termsText = (order: OfferedOrder): string =>
  canonical({
    urgency: order.urgency,
    ruleSet: order.ruleSet,
    decisionRule: order.decisionRule,
    guardBandRatio: order.guardBandRatio,
    falseAcceptancePercent: order.falseAcceptancePercent,
    uncertaintyDigits: order.uncertaintyDigits,
    lines: order.lines.map((line) => ({
      position: line.position,
      typeLetter: line.typeLetter,
      construction: line.construction,
      protection: line.protection,
      quantity: line.quantity,
      temperatureUnit: line.temperatureUnit,
      setpoints: line.setpoints.map(({ typed }) => typed),
      tolerance: line.tolerance,
      ownLimit: line.ownLimit ?? null,
      useTerms: { ...line.useTerms },
      groupName: line.groupName,
      options: JSON.parse(JSON.stringify(line.options)),
      performedAt: line.performedAt,
      siteAddress: line.siteAddress,
      providerId: line.providerId,
    })),
  });
