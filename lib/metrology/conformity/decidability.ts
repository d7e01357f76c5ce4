import { found, type Outcome, refused } from "../outcome";
import { type ConformityRule, guardBand, type RuleUncertainty } from "./guard-band";

export type Decidability = {
  readonly kind: "decidable" | "not-decidable";
  readonly guardBandCelsius: number;
  /** Half-width of the acceptance zone; null when no result could pass. */
  readonly acceptanceCelsius: number | null;
  /**
   * U at which the acceptance zone closes, the shape of the budget (k, ν) unchanged; null where the rule asks nothing
   * of U. `isLimitIncluded`:
   * whether that U itself still decides (a U at most so much of the tolerance) or only a smaller one.
   */
  readonly limitExpandedCelsius: number | null;
  readonly isLimitIncluded: boolean;
  /** Tolerance at which the same U and rule leave no zone; any larger one is decidable. 0: all are. */
  readonly limitToleranceCelsius: number;
};

/**
 * Whether a result could be judged at all, before anything is measured: from the expected U, the tolerance and the rule
 * (ISO/IEC 17025:2017, 7.1.1 and 7.1.3; ILAC-G8:09/2019, 4.2: the acceptance zone AL = TL − w must not be empty; by a target risk p_c at zero error must exceed 1 − PFA, both tails
 * counted, JCGM 106:2012, 7.4). Says as
 * well what would be needed: the U below which, and the tolerance above which, it is decidable.
 * Symbols: TL = `toleranceCelsius`, u and U expected, °C, ν without unit. Refused: TL not finite, and whatever
 * `guardBand` refuses.
 */
export function decidability(
  toleranceCelsius: number,
  rule: ConformityRule,
  expected: RuleUncertainty,
): Outcome<Decidability> {
  if (!Number.isFinite(toleranceCelsius)) {
    return refused("not-finite", `a tolerance of ${toleranceCelsius} °C is not a number`);
  }
  const band = guardBand(rule, expected, toleranceCelsius);
  if (!band.ok) return band;
  const { guardBandCelsius: w, closingCelsius: closing } = band.value;
  const { expandedCelsius: expanded } = expected;
  if (rule.kind === "simple") return found(simpleDecidability(toleranceCelsius, rule.largestRatio, expanded));
  const isOpen = w < toleranceCelsius;
  return found({
    kind: isOpen ? "decidable" : "not-decidable",
    guardBandCelsius: w,
    acceptanceCelsius: isOpen ? toleranceCelsius - w : null,
    // The closing tolerance is proportional to U: the zone closes where U has grown, or shrunk, by TL over it.
    limitExpandedCelsius: closing > 0 ? (expanded * toleranceCelsius) / closing : null,
    isLimitIncluded: false,
    limitToleranceCelsius: Math.max(0, closing),
  });
}

function simpleDecidability(
  tolerance: number,
  largestRatio: number | undefined,
  expanded: number,
): Decidability {
  const largest = largestRatio === undefined ? null : largestRatio * tolerance;
  const isOpen = largest === null || expanded <= largest;
  return {
    kind: isOpen ? "decidable" : "not-decidable",
    guardBandCelsius: 0,
    acceptanceCelsius: isOpen ? tolerance : null,
    limitExpandedCelsius: largest,
    isLimitIncluded: largest !== null,
    limitToleranceCelsius: largestRatio === undefined ? 0 : expanded / largestRatio,
  };
}
