import type { ImpactClass } from "./labels";

/**
 * From |δ|/U on, what a change δ of a result means: the laboratory's policy, no source. A third is where δ, combined
 * with U by root sum of squares, lengthens it by about 5 %.
 */
export const impactPolicy = { noneBelow: 0.1, reviewBelow: 1 / 3, recallAbove: 1 } as const;

export type AffectedResult = {
  readonly celsius: number;
  readonly errorCelsius: number;
  readonly expandedCelsius: number;
  /** null: none was stated. */
  readonly toleranceCelsius: number | null;
};

/** True where the statement would have been the other one: the error crosses the tolerance. */
const isFlipped = (result: AffectedResult, deltaCelsius: number): boolean => {
  const limit = result.toleranceCelsius;
  if (limit === null) return false;
  return Math.abs(result.errorCelsius) <= limit !== Math.abs(result.errorCelsius + deltaCelsius) <= limit;
};

/** `deltaCelsius`: by how much the error is expected to change, °C; null where nobody knows yet. */
export const assessImpact = (result: AffectedResult, deltaCelsius: number | null): ImpactClass => {
  if (deltaCelsius === null) return "not-stated";
  const ratio = Math.abs(deltaCelsius) / result.expandedCelsius;
  if (ratio > impactPolicy.recallAbove || isFlipped(result, deltaCelsius)) return "recall";
  if (ratio < impactPolicy.noneBelow) return "none";
  return ratio < impactPolicy.reviewBelow ? "review" : "significant";
};

const rank: Readonly<Record<ImpactClass, number>> = {
  none: 0,
  review: 1,
  "not-stated": 2,
  significant: 3,
  recall: 4,
};

/** A certificate counts as its worst result. */
export const worstImpact = (classes: readonly ImpactClass[]): ImpactClass =>
  classes.reduce<ImpactClass>((worst, one) => (rank[one] > rank[worst] ? one : worst), "none");

/** Whose customer has to hear of it (7.10.1 e); what nobody has judged yet counts as if it did. */
export const isToBeTold = (impact: ImpactClass): boolean => rank[impact] >= rank["not-stated"];
