import { describe, expect, it } from "vitest";
import { createStream } from "@/lib/metrology/number/random";
import type { Correlation } from "@/lib/metrology/uncertainty/correlation-factor";
import type { Distribution } from "@/lib/metrology/uncertainty/distribution";
import { linearSampler } from "@/lib/metrology/uncertainty/monte-carlo/linear-sampler";
import { modelSampler } from "@/lib/metrology/uncertainty/monte-carlo/model-sampler";
import { type MonteCarloOptions, monteCarloSteps } from "@/lib/metrology/uncertainty/monte-carlo/monte-carlo";
import { outcomeValue } from "../outcome-value";

const normal = (standardDeviation: number): Distribution => ({ kind: "normal", standardDeviation });
const correlated = (coefficient: number): Correlation[] => [{ first: 0, second: 1, coefficient }];

describe("modelSampler", () => {
  it.each([
    [0, 100],
    [100, 200],
    [1000, 3500],
  ])("writes the trials from %i to the one before %i and no others", (from, to) => {
    const sampler = outcomeValue(
      modelSampler(
        [{ estimate: 5, distribution: { kind: "rectangular", halfWidth: 1 } }],
        [],
        ([x]) => x ?? 0,
      ),
    );
    const values = new Float64Array(5000).fill(9);
    sampler(createStream(3), values, from, to);
    // The estimate ± 1 is written; 9 was there.
    expect(values.subarray(from, to).every((value) => value >= 4 && value < 6)).toBe(true);
    expect(values.subarray(0, from).every((value) => value === 9)).toBe(true);
    expect(values.subarray(to).every((value) => value === 9)).toBe(true);
  });

  it("draws correlated inputs as estimate + σ·L·z (JCGM 101:2008, 6.4.8.4)", () => {
    // r = −1: L is a column of 1 and −1, so that one z serves both; z are the same stream's standard normals.
    const inputs = [
      { estimate: 10, distribution: normal(0.5) },
      { estimate: 20, distribution: normal(3) },
    ];
    const seen: number[][] = [];
    const sampler = outcomeValue(
      modelSampler(inputs, correlated(-1), (x) => {
        seen.push([...x]);
        return 0;
      }),
    );
    sampler(createStream(3), new Float64Array(50), 0, 50);
    const z = new Float64Array(50);
    outcomeValue(linearSampler(0, [{ sensitivity: 1, distribution: normal(1) }]))(createStream(3), z, 0, 50);
    expect(seen).toHaveLength(50);
    for (const [i, [first, second]] of seen.entries()) {
      expect(first).toBeCloseTo(10 + 0.5 * (z[i] as number), 12);
      expect(second).toBeCloseTo(20 - 3 * (z[i] as number), 12);
    }
  });

  it("lets an input without uncertainty be correlated: it stays at its estimate", () => {
    const seen = new Set<number>();
    const sampler = outcomeValue(
      modelSampler(
        [
          { estimate: 7, distribution: { kind: "none" } },
          { estimate: 0, distribution: normal(1) },
        ],
        correlated(0.5),
        ([first = Number.NaN, second = Number.NaN]) => {
          seen.add(first);
          return second;
        },
      ),
    );
    const values = new Float64Array(20);
    sampler(createStream(3), values, 0, 20);
    expect([...seen]).toEqual([7]);
    expect(new Set(values).size).toBe(20);
  });
});

describe("monteCarloSteps", () => {
  it("reports no progress beyond the trials asked for", () => {
    // One chunk of 1024 less than the 65 536 of the first report.
    const options: MonteCarloOptions = {
      seed: 1,
      stream: 0,
      probability: 0.95,
      trials: { kind: "fixed", count: 64_512 },
    };
    const sampler = outcomeValue(linearSampler(0, [{ sensitivity: 1, distribution: normal(1) }]));
    expect(monteCarloSteps(sampler, options, new Float64Array(64_512)).next().done).toBe(true);
  });
});
