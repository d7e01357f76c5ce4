import type { OfferContent } from "./content";

type Point = OfferContent["lines"][number]["points"][number];

/** On paper and on screen the same. */
export const conformityWords: Readonly<Record<Point["conformity"], string>> = {
  decidable: "can be decided",
  "not-decidable": "cannot be decided",
  "no-tolerance-defined": "no tolerance defined",
  "no-question": "not asked for",
  "no-rule": "no rule agreed",
  unknown: "not known yet",
};

export const scopeWords: Readonly<Record<Point["scope"], string>> = {
  "not-stated": "no scope stated",
  inside: "in scope",
  outside: "† outside",
  unusable: "† outside",
};

/** A class is asked, and it has no limit at these points. */
export const nothingStated = (where: string): string =>
  `No tolerance is defined there, so nothing can be stated: ${where}.`;

export const paperTitles = {
  quotation: "Quotation",
  acknowledgment: "Order acknowledgment",
  "delivery-note": "Delivery note",
} as const;
