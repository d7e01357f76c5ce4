import { expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import { pointMonteCarlo } from "@/lib/domain/evidence/point-monte-carlo";
import { dominantWord } from "@/lib/domain/review/dominant-word";
import { dominatedBudgets } from "@/lib/domain/review/dominated-budgets";
import { buildEvidence } from "../evidence/build-evidence";

/** The engine's points where the wire's inhomogeneity has this half-width, relative. */
const pointsWith = (halfWidth: number): readonly MeasuredPoint[] => {
  const evidence = buildEvidence({ sensors: ["K", "S"], nominals: [900] });
  const [first, ...rest] = evidence.sensors;
  const inhomogeneity = { kind: "rectangular", halfWidth, unit: "relative", source: "invented" } as const;
  const outcome = evaluateEvidence({ ...evidence, sensors: [{ ...first!, inhomogeneity }, ...rest] });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.evaluation.points.flatMap((point) => (point.state === "measured" ? [point] : []));
};
/** As the page of a result does. */
const drawn = (point: MeasuredPoint) => {
  const trials = { kind: "fixed", count: 20_000 } as const;
  const found = pointMonteCarlo(point, 1, { seed: 1, trials }, new Float64Array(trials.count));
  if (!found.ok) throw new Error(found.problem.message);
  return found.value.expandedMicrovolt / point.expandedMicrovolt;
};

it("names what a rectangle dominates, where the interval drawn is another, and only that", () => {
  const points = pointsWith(0.004);
  expect(dominatedBudgets(points)).toEqual([
    {
      weight: 15,
      kind: "coverage",
      subject: "Coverage",
      text: expect.stringMatching(
        /^k = 2\.0\d takes for normal .*“Sensor inhomogeneity”.* would be k = 1\.65/,
      ),
      point: { sensor: "X1", setpoint: "900" },
    },
  ]);
  const [wire, other] = points as [MeasuredPoint, MeasuredPoint];
  expect(drawn(wire)).toBeLessThan(0.92);
  expect(drawn(other)).toBeGreaterThan(0.95);
  expect(dominantWord(wire)).toMatch(/^wire 9\d %$/);
});

it("says nothing of a budget of many, nor where k was found in that way already", () => {
  expect(dominatedBudgets(pointsWith(0.0005))).toEqual([]);
  const [wire] = pointsWith(0.004);
  const coverage = { ...wire!.coverage, method: "one-dominant-rectangle" as const };
  expect(dominatedBudgets([{ ...wire!, coverage }])).toEqual([]);
});
