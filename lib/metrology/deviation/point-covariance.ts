import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";

/**
 * One line of the points' budgets across all points: its signed effect (sensitivity × standard uncertainty) at each
 * point, in the unit of the deviation. `isShared`: one error acts at every point (certificate of the reference,
 * voltmeter, junction); else each point has its own.
 */
export type PointLine = {
  readonly key: string;
  readonly isShared: boolean;
  readonly effects: readonly number[];
};

export type PointCovariance = {
  /** V, n × n, in the square of the unit. */
  readonly covariance: readonly (readonly number[])[];
  /** Standard uncertainty of what is each point's own: the weights of the fit. */
  readonly own: readonly number[];
};

/**
 * V_ij = Σ_shared eᵢ·eⱼ + δ_ij·Σ_own eᵢ²: the covariance of points that share errors (JCGM 100:2008, F.1.2.3).
 * The signs matter: a shared error that acts both ways cancels. Unit: the square of the effects'.
 * Problems: `too-few` without lines or points; `not-applicable` when lines differ in length; `not-finite`.
 */
export function pointCovariance(lines: readonly PointLine[]): Outcome<PointCovariance> {
  const points = lines[0]?.effects ?? [];
  if (points.length === 0) return refused("too-few", "a covariance needs at least one line and one point");
  for (const { key, effects } of lines) {
    if (effects.length !== points.length) {
      return refused("not-applicable", `line ${key} has ${effects.length} of ${points.length} points`);
    }
    if (!effects.every(Number.isFinite))
      return refused("not-finite", `line ${key} holds no number somewhere`);
  }
  const across = (i: number, j: number, isShared: boolean): number =>
    sum(
      lines
        .filter((line) => line.isShared === isShared)
        .map(({ effects }) => (effects[i] as number) * (effects[j] as number)),
    );
  const ownSquares = points.map((_, i) => across(i, i, false));
  const covariance = points.map((_, i) =>
    ownSquares.map((square, j) => across(i, j, true) + (i === j ? square : 0)),
  );
  return found({ covariance, own: ownSquares.map((square) => Math.sqrt(square)) });
}
