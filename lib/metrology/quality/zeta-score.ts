import { found, type Outcome } from "../outcome";
import { type ComparedResult, scaledDifference } from "./normalized-error";

/** |ζ| ≤ 2 is satisfactory, ≥ 3 asks for action (ISO 13528:2015, 9.6 with 9.4.2; clause numbers from memory). */
const SATISFACTORY = 2;
const ACTION = 3;

export type ZetaScore = {
  readonly score: number;
  readonly verdict: "satisfactory" | "questionable" | "unsatisfactory";
};

/**
 * ζ = (x − X)/√(u_x² + u_X² − 2·r·u_x·u_X): as E_n, with standard uncertainties.
 *
 * Source: ISO 13528:2015, 9.6 (clause from memory); r as `normalizedError` says. Value and **standard** uncertainty in
 * any one unit; r from −1 to 1; the score has no unit. |ζ| ≤ 2 satisfactory, 2 < |ζ| < 3 questionable, ≥ 3
 * unsatisfactory. Problems: those of `normalizedError`.
 */
export function zetaScore(
  laboratory: ComparedResult,
  reference: ComparedResult,
  correlation = 0,
): Outcome<ZetaScore> {
  const score = scaledDifference(laboratory, reference, correlation);
  if (!score.ok) return score;
  const size = Math.abs(score.value);
  const verdict = size <= SATISFACTORY ? "satisfactory" : size < ACTION ? "questionable" : "unsatisfactory";
  return found({ score: score.value, verdict });
}
