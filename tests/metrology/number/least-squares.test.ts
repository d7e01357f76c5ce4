import { describe, expect, it } from "vitest";
import { cholesky } from "@/lib/metrology/number/cholesky";
import { leastSquares } from "@/lib/metrology/number/least-squares";
import { monotoneCubic } from "@/lib/metrology/number/monotone-cubic";
import { problemOf, resultOf } from "../result-of";

describe("leastSquares", () => {
  it("solves a small case exactly as by hand", () => {
    // y = 1 + 2x through (0,1), (1,3), (2,5), the middle lifted by 3 and given half the weight.
    const fit = resultOf(
      leastSquares(
        [
          [1, 0],
          [1, 1],
          [1, 2],
        ],
        [1, 6, 5],
        [1, 0.5, 1],
      ),
    );
    expect(fit.coefficients[1]).toBeCloseTo(2, 12);
    expect(fit.coefficients[0]).toBeCloseTo(1.6, 12);
    expect(fit.residuals.map((r) => r.toFixed(9))).toEqual(["-0.600000000", "2.400000000", "-0.600000000"]);
    expect(fit.chiSquare).toBeCloseTo(0.36 + 0.5 * 5.76 + 0.36, 12);
    expect(fit.degreesOfFreedom).toBe(1);
  });

  it("has residuals that are perpendicular to every column, and a map that gives its coefficients", () => {
    const x = [300, 500, 700, 900, 1100];
    const y = [1.2, 0.4, -2.2, 3.1, 0.3];
    const weights = [1, 4, 2, 0.5, 3];
    const design = x.map((t) => [t, t * t, t * t * t]);
    const fit = resultOf(leastSquares(design, y, weights));
    for (const k of [0, 1, 2]) {
      const along = design.map((row, i) => (row[k] ?? 0) * (fit.residuals[i] ?? 0) * (weights[i] ?? 0));
      const size = along.reduce((a, b) => a + Math.abs(b), 0);
      expect(Math.abs(along.reduce((a, b) => a + b)) / size).toBeLessThan(1e-11);
      const mapped = (fit.map[k] ?? []).reduce((a, m, i) => a + m * (y[i] ?? 0), 0);
      expect(mapped / (fit.coefficients[k] ?? 0)).toBeCloseTo(1, 12);
      // M·W⁻¹·Mᵀ = (XᵀWX)⁻¹.
      const variance = (fit.map[k] ?? []).reduce((a, m, i) => a + (m * m) / (weights[i] ?? 0), 0);
      expect(variance / (fit.inverseNormal[k]?.[k] ?? 0)).toBeCloseTo(1, 11);
    }
  });

  it("works with columns whose first value is zero, or negative, and with one that is spent early", () => {
    const fit = resultOf(
      leastSquares(
        [
          [0, -1],
          [2, 0],
          [0, 0],
        ],
        [3, 4, 1],
        [1, 1, 1],
      ),
    );
    expect(fit.coefficients[0]).toBeCloseTo(2, 12);
    expect(fit.coefficients[1]).toBeCloseTo(-3, 12);
  });

  it.each<[string, number[][], number[], number[]]>([
    ["too-few", [], [], []],
    ["too-few", [[]], [1], [1]],
    ["too-few", [[1, 2]], [1], [1]],
    ["not-applicable", [[1], [1]], [1], [1]],
    ["not-applicable", [[1], [1]], [1, 2], [1]],
    ["not-applicable", [[1], [1, 2]], [1, 2], [1, 1]],
    ["not-applicable", [[1], [1]], [1, 2], [1, 0]],
    ["not-finite", [[1], [Number.NaN]], [1, 2], [1, 1]],
    ["not-finite", [[1], [1]], [1, Number.NaN], [1, 1]],
    ["not-finite", [[1], [1]], [1, 2], [1, Number.NaN]],
    ["no-solution", [[0], [0]], [1, 2], [1, 1]],
    [
      "no-solution",
      [
        [1, 2],
        [1, 2],
        [1, 2],
      ],
      [1, 2, 3],
      [1, 1, 1],
    ],
    [
      "no-solution",
      [
        [1, 0, 1],
        [0, 1, 1],
        [0, 0, 0],
      ],
      [1, 2, 3],
      [1, 1, 1],
    ],
  ])("is refused as %s: %j", (kind, design, y, weights) => {
    expect(problemOf(leastSquares(design, y, weights))).toBe(kind);
  });
});

describe("cholesky", () => {
  it("gives a lower triangle whose square is the matrix", () => {
    const lower = resultOf(
      cholesky([
        [4, 2, 0],
        [2, 5, 2],
        [0, 2, 2],
      ]),
    );
    expect(lower).toEqual([
      [2, 0, 0],
      [1, 2, 0],
      [0, 1, 1],
    ]);
  });

  it("takes a matrix in which all share one error", () => {
    const lower = resultOf(
      cholesky([
        [9, 6],
        [6, 4],
      ]),
    );
    expect(lower).toEqual([
      [3, 0],
      [2, 0],
    ]);
    expect(
      resultOf(
        cholesky([
          [0, 0],
          [0, 1],
        ]),
      ),
    ).toEqual([
      [0, 0],
      [0, 1],
    ]);
    expect(resultOf(cholesky([]))).toEqual([]);
  });

  it.each<[string, number[][]]>([
    ["not-applicable", [[1, 0]]],
    [
      "not-applicable",
      [
        [1, 0.5],
        [0.4, 1],
      ],
    ],
    ["not-finite", [[Number.NaN]]],
    ["no-solution", [[-1]]],
    [
      "no-solution",
      [
        [1, 2],
        [2, 1],
      ],
    ],
    [
      "no-solution",
      [
        [0, 1],
        [1, 1],
      ],
    ],
    [
      "no-solution",
      [
        [1, 0.9, 0],
        [0.9, 1, 0.9],
        [0, 0.9, 1],
      ],
    ],
  ])("is refused as %s: %j", (kind, matrix) => {
    expect(problemOf(cholesky(matrix))).toBe(kind);
  });
});

describe("monotoneCubic", () => {
  const nodes = [
    { x: 0, y: 0 },
    { x: 1, y: 1 },
    { x: 2, y: 1 },
    { x: 4, y: 4 },
    { x: 5, y: 3 },
  ];

  it("passes through its nodes and never overshoots between them", () => {
    for (const { x, y } of nodes) expect(monotoneCubic(nodes, x).value).toBeCloseTo(y, 12);
    for (let x = 1; x <= 2; x += 0.05) expect(monotoneCubic(nodes, x).value).toBeCloseTo(1, 12);
    for (let x = 0; x <= 5; x += 0.01) {
      expect(monotoneCubic(nodes, x).value).toBeLessThanOrEqual(4 + 1e-12);
      expect(monotoneCubic(nodes, x).value).toBeGreaterThanOrEqual(0 - 1e-12);
    }
  });

  it("has the slope of its own values, also at the last node", () => {
    for (const x of [0.3, 0.9, 1.5, 2.7, 3.9, 4.4, 4.99]) {
      const rise = monotoneCubic(nodes, x + 1e-6).value - monotoneCubic(nodes, x - 1e-6).value;
      expect(monotoneCubic(nodes, x).slope).toBeCloseTo(rise / 2e-6, 6);
    }
    const last = (monotoneCubic(nodes, 5).value - monotoneCubic(nodes, 5 - 1e-6).value) / 1e-6;
    expect(monotoneCubic(nodes, 5).slope).toBeCloseTo(last, 4);
  });

  it("is a parabola's own where that does not overshoot, straight through two nodes", () => {
    const square = [0, 1, 2, 3, 4].map((x) => ({ x: x + 5, y: (x + 5) * (x + 5) }));
    for (const x of [5.5, 6.2, 7.5, 8.8]) expect(monotoneCubic(square, x).value).toBeCloseTo(x * x, 10);
    const two = [
      { x: 0, y: 0 },
      { x: 2, y: 3 },
    ];
    expect(monotoneCubic(two, 0.5)).toEqual({ value: 0.75, slope: 1.5 });
  });

  it("holds its end slopes to what keeps the rise: zero past an extreme, twice the chord at most", () => {
    const flat = [
      { x: 0, y: 0 },
      { x: 1, y: 0.1 },
      { x: 2, y: 3 },
    ];
    expect(monotoneCubic(flat, 0).slope).toBe(0);
    const steep = [
      { x: 0, y: 0 },
      { x: 1, y: 1 },
      { x: 1.2, y: -2 },
    ];
    expect(monotoneCubic(steep, 0).slope).toBe(2);
  });

  it("is constant beyond its ends and of one node, and NaN of none or at NaN", () => {
    expect(monotoneCubic(nodes, -1)).toEqual({ value: 0, slope: 0 });
    expect(monotoneCubic(nodes, 9)).toEqual({ value: 3, slope: 0 });
    expect(monotoneCubic([{ x: 1, y: 7 }], 1)).toEqual({ value: 7, slope: 0 });
    expect(monotoneCubic([], 1).value).toBeNaN();
    expect(monotoneCubic(nodes, Number.NaN).value).toBeNaN();
  });
});
