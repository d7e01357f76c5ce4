import { storedTolerance } from "../order/asked-tolerance";
import type { CapabilityAnswer } from "../order/capability";
import { decisionRuleText, protectionLabels } from "../order/labels";
import { setpointTolerances } from "../order/setpoint-tolerances";
import { tolerancePhrase } from "../order/tolerance-phrase";
import { termsOfUseText } from "../order/use-terms";
import type { ComposedPrice } from "../price/compose-price";
import type { OfferContent } from "./content";
import { type OfferedLine, type OfferedOrder, termsText } from "./offered-order";
import { agreedRemarks, notDoneRemarks } from "./offered-remarks";
import { optionsInPlainWords, placeInPlainWords, ruleInPlainWords } from "./plain-words";
import { nothingStated } from "./point-words";

export type OfferedPoint = CapabilityAnswer;

export type OfferParts = {
  readonly kind: OfferContent["kind"];
  readonly number: string;
  readonly on: string;
  readonly laboratory: {
    readonly name: string;
    readonly addressLines: string;
    readonly contact: string;
    readonly accreditationText: string;
    readonly isDemo: boolean;
  };
  readonly customer: { readonly name: string; readonly addressLines: string; readonly contactName: string };
  readonly order: OfferedOrder;
  /** Title and revision of the procedure; null = none is current. */
  readonly procedure: string | null;
  readonly points: readonly OfferedPoint[];
  readonly price: ComposedPrice | null;
  readonly currency: string;
  readonly validUntil: string | null;
  readonly delivery: string;
  readonly sha256Hex: (text: string) => string;
};

const rowsOf = (text: string): string[] => text.split("\n").filter((row) => row.trim() !== "");

/** A class is asked for and no rule: pass or fail is not left out because nobody asked. */
const hasNoRule = ({ tolerance }: OfferedLine, { state }: OfferedPoint): boolean =>
  tolerance !== "none" && state === "no-question";

/** In the place of a U: whose it is, or that there is none to expect, for the reason that is remarked. */
const notExpected = ({ providerId }: OfferedLine, { can }: OfferedPoint): string => {
  if (providerId !== null) return "the provider’s";
  return can === "no" ? "not as it stands" : "not known";
};

const lineOf = (line: OfferedLine, points: readonly OfferedPoint[]): OfferContent["lines"][number] => {
  const tolerances = setpointTolerances(line);
  return {
    position: line.position,
    typeLetter: line.typeLetter,
    quantity: line.quantity,
    group: line.groupName,
    description: `${line.construction}. ${protectionLabels[line.protection]}.`,
    specification: tolerancePhrase(storedTolerance(line)),
    extras: [
      ...placeInPlainWords(line),
      ...optionsInPlainWords(line.options, line.temperatureUnit),
      ...[termsOfUseText(line.useTerms, line.temperatureUnit)].filter((text) => text !== ""),
    ],
    points: points.map((point, index) => ({
      setpoint: point.setpoint,
      tolerance: tolerances[index]?.tolerance || "none asked for",
      expected: point.expected || notExpected(line, point),
      scope: point.scope.state,
      conformity: hasNoRule(line, point) ? "no-rule" : point.state,
    })),
  };
};

/** "line 1: 600 °C, 800 °C; line 2: 900 °F", or nothing. */
const where = (points: readonly OfferedPoint[], is: (point: OfferedPoint) => boolean): string => {
  const found = points.filter(is);
  return [...new Set(found.map(({ position }) => position))]
    .map(
      (at) =>
        `line ${at}: ${found
          .filter(({ position }) => position === at)
          .map(({ setpoint }) => setpoint)
          .join(", ")}`,
    )
    .join("; ");
};

const remarksOf = (order: OfferedOrder, points: readonly OfferedPoint[]): string[] => {
  const { lines } = order;
  const withoutRule = where(points, (point) =>
    lines.some((line) => line.position === point.position && hasNoRule(line, point)),
  );
  const outside = where(points, ({ scope }) => scope.state === "outside" || scope.state === "unusable");
  const open = where(points, ({ state }) => state === "not-decidable");
  const undefinedAt = where(points, ({ state }) => state === "no-tolerance-defined");
  // Of a provider's points nothing is expected here; why a point cannot be done is said of itself.
  const unknown = where(points, ({ expected, can, position }) => {
    const isAway = lines.some((line) => line.position === position && line.providerId !== null);
    return expected === "" && can !== "no" && !isAway;
  });
  return [
    ...notDoneRemarks(points),
    ...(outside
      ? [`Outside the laboratory’s scope of accreditation, and marked so on the certificate: ${outside}.`]
      : []),
    ...(open
      ? [
          `With the uncertainty to expect, conformity cannot be decided; the certificate will say so: ${open}.`,
        ]
      : []),
    ...(withoutRule
      ? [
          `A tolerance is named and no decision rule is agreed, so pass or fail is not stated: ${withoutRule}.`,
        ]
      : []),
    ...(undefinedAt ? [nothingStated(undefinedAt)] : []),
    ...(unknown ? [`What uncertainty to expect is not known yet: ${unknown}.`] : []),
    ...agreedRemarks(order),
  ];
};

const agreementOf = (order: OfferedOrder): string =>
  order.decisionRuleAgreedBy
    ? `Agreed by ${order.decisionRuleAgreedBy}${order.decisionRuleAgreedOn ? ` on ${order.decisionRuleAgreedOn}` : ""}.`
    : "";

/** The whole of an offer, or of an acknowledgment, from its order and what was reckoned for it. */
export const composeOffer = (parts: OfferParts): OfferContent => {
  const { order, laboratory, customer, points, price } = parts;
  return {
    schema: 1,
    kind: parts.kind,
    number: parts.number,
    on: parts.on,
    laboratory: {
      name: laboratory.name,
      addressLines: rowsOf(laboratory.addressLines),
      contact: laboratory.contact,
      accreditation: laboratory.accreditationText,
      isDemo: laboratory.isDemo,
    },
    customer: {
      name: customer.name,
      addressLines: rowsOf(customer.addressLines),
      contactName: customer.contactName,
    },
    order: { number: order.number, purchaseOrder: order.purchaseOrder ?? "", urgency: order.urgency },
    method: `Comparison with reference thermocouples in a tube furnace${parts.procedure ? `, by ${parts.procedure}` : ""}. Temperatures are on the International Temperature Scale of 1990 (ITS-90).`,
    rule: { name: decisionRuleText(order), plain: ruleInPlainWords(order), agreement: agreementOf(order) },
    lines: order.lines.map((line) =>
      lineOf(
        line,
        points.filter(({ position }) => position === line.position),
      ),
    ),
    remarks: remarksOf(order, points),
    price:
      price === null || price.total === null
        ? null
        : { currency: parts.currency, lines: price.lines.map((line) => ({ ...line })), total: price.total },
    validUntil: parts.validUntil,
    delivery: parts.delivery,
    termsHash: parts.sha256Hex(termsText(order)),
  };
};
