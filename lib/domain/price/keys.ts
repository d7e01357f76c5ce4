import type { LineOptions } from "../order/options";

/** What a price can be for. Each order asks for the calibration itself; the others are asked for or not. */
export const priceKeys = [
  "calibration",
  "second-set",
  "anneal",
  "correction-table",
  "coefficients",
  "budget",
  "evidence",
  "express",
  "subcontracted",
  "on-site",
  "minimum-order",
] as const;
export type PriceKey = (typeof priceKeys)[number];

export const priceKeyLabels: Readonly<Record<PriceKey, string>> = {
  calibration: "Calibration",
  "second-set": "Second set of results: as received and after annealing",
  anneal: "Annealing",
  "correction-table": "Table of corrections",
  coefficients: "Coefficients of the deviation function",
  budget: "Uncertainty budget on the certificate",
  evidence: "Evidence file attached",
  express: "Express",
  subcontracted: "Handling of subcontracted work",
  "on-site": "Work at the customer’s site",
  "minimum-order": "Minimum order",
};

export const pricePers = ["point", "sensor", "line", "order"] as const;
export type PricePer = (typeof pricePers)[number];
export const pricePerLabels: Readonly<Record<PricePer, string>> = {
  point: "each point of each sensor",
  sensor: "each sensor",
  line: "each order line",
  order: "the order, once",
};

export const isPriceKey = (value: string): value is PriceKey =>
  (priceKeys as readonly string[]).includes(value);

export type ChargedLine = {
  readonly position: number;
  readonly typeLetter: string;
  readonly quantity: number;
  readonly points: number;
  readonly options: LineOptions;
  readonly isSubcontracted: boolean;
  readonly isOnSite: boolean;
};

export type ChargedOrder = {
  readonly urgency: "standard" | "express";
  readonly lines: readonly ChargedLine[];
};

/** What a line asks for, that a price has to be there for. */
export const wantedKeys = (
  { options, isSubcontracted, isOnSite }: ChargedLine,
  urgency: ChargedOrder["urgency"],
): readonly PriceKey[] => [
  "calibration",
  ...(options.sets === "both" ? (["second-set"] as const) : []),
  ...(options.sets === "as-received" ? [] : (["anneal"] as const)),
  ...(options.correctionTable ? (["correction-table"] as const) : []),
  ...(options.coefficients ? (["coefficients"] as const) : []),
  ...(options.budget ? (["budget"] as const) : []),
  ...(options.evidence ? (["evidence"] as const) : []),
  ...(urgency === "express" ? (["express"] as const) : []),
  ...(isSubcontracted ? (["subcontracted"] as const) : []),
  ...(isOnSite ? (["on-site"] as const) : []),
];
