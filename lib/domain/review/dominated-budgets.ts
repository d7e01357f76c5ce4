import { combineAndCover } from "../evidence/combine-and-cover";
import type { EvaluatedPoint, MeasuredPoint } from "../evidence/evaluation";
import { pointEffects } from "../evidence/point-effects";
import { about } from "./about";
import type { ReviewException } from "./review-exception";

/** What one or two rectangles make of its interval, where k was taken from Student's t all the same. */
const byRectangles = (
  point: MeasuredPoint,
): { readonly factor: number; readonly criterion: string } | null => {
  if (point.coverage.method !== "student") return null;
  const covered = combineAndCover(pointEffects(point), point.shared, "dominant");
  if (!covered.ok || covered.value.coverage.method === "student") return null;
  return { factor: covered.value.coverageFactor, criterion: covered.value.coverage.criterion };
};

/**
 * Budgets that are no normal distribution: one or two rectangles outweigh all else by the criterion of EA-4/02, S9 and S10
 * (`dominantPolicy`), and k = 2 gives an interval that covers more than it says. The budget drawn beside it shows by how
 * much (JCGM 101:2008, clause 8). Said once for all whose largest line is the same.
 */
export const dominatedBudgets = (points: readonly EvaluatedPoint[]): readonly ReviewException[] => {
  const found = points.flatMap((point) => {
    const other = point.state === "measured" ? byRectangles(point) : null;
    return point.state === "measured" && other ? [{ point, ...other }] : [];
  });
  const lines = [...new Set(found.map(({ point }) => point.dominant))];
  return lines.flatMap((line) => {
    const own = found.filter(({ point }) => point.dominant === line);
    const [first] = own;
    if (!first) return [];
    return [
      {
        weight: 15,
        kind: "coverage" as const,
        subject: "Coverage",
        text: `k = ${first.point.printed.coverageFactor} takes for normal what is not: ${first.criterion}, would be k = ${first.factor.toFixed(2)}. See Monte Carlo beside it`,
        ...about(own.map(({ point }) => point)),
      },
    ];
  });
};
