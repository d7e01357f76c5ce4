import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Capability } from "@/lib/domain/evidence/capability";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import { parseEvidence } from "@/lib/domain/evidence/parse-evidence";
import { pointScope } from "@/lib/domain/evidence/point-scope";
import { printPoint } from "@/lib/domain/evidence/print-point";
import type { ScopeLine } from "@/lib/domain/evidence/schema";
import { capabilityAt } from "@/lib/metrology/reporting/capability-at";
import { measuredPoint } from "../../support/evaluated-point";
import { askFunction, lineThroughZero } from "./ask-function";
import { buildEvidence } from "./build-evidence";
import { evaluate, measured } from "./measured";

const from = -40;
const to = 1200;
const source = "invented schedule, line 1";

const figure = (max: number) => fc.double({ min: max / 1000, max, noNaN: true });
/** Every form, positive over the whole range: coefficients of even powers, so no sum is below its constant. */
const capabilities: fc.Arbitrary<Exclude<Capability, { kind: "constant" }>> = fc.oneof(
  fc.record({
    kind: fc.constant("proportional" as const),
    constantCelsius: figure(2),
    perCelsius: figure(0.01),
  }),
  fc
    .tuple(figure(2), figure(1e-6))
    .map(([a, c]) => ({ kind: "polynomial" as const, coefficientsCelsius: [a, 0, c] })),
  fc.tuple(figure(3), figure(3), figure(3)).map((three) => ({
    kind: "table" as const,
    points: three.map((expandedCelsius, index) => ({
      celsius: [from, 400, to][index] ?? to,
      expandedCelsius,
    })),
  })),
);
const temperatures = fc.oneof(
  fc.constantFrom(from, 0, 400, to),
  fc.double({ min: from, max: to, noNaN: true }),
);

/** "1\u202f230" and "−4" as numbers again. */
const read = (printed: string) => Number(printed.replaceAll("\u202f", "").replace("−", "-"));
const line = (capability: Exclude<Capability, { kind: "constant" }>): ScopeLine => ({
  type: "K",
  fromCelsius: from,
  toCelsius: to,
  capability,
  source,
});

const printedAt = (scope: readonly ScopeLine[], celsius: number, expandedCelsius: number, digits: 1 | 2) => {
  const invented = measuredPoint({
    sensor: "T",
    setpoint: "1",
    type: "K",
    celsius,
    error: 0.4,
    rule: "none",
  });
  const placed = pointScope([...scope], "K", celsius, expandedCelsius);
  if (!placed.ok) throw new Error(placed.problem.message);
  const slope = invented.seebeckMicrovoltPerCelsius;
  const point: MeasuredPoint = {
    ...invented,
    expandedCelsius,
    expandedMicrovolt: expandedCelsius * slope,
    scope: placed.value,
  };
  const printed = printPoint(point, digits);
  if (!printed.ok) throw new Error(JSON.stringify(printed.problems));
  return { placed: placed.value, printed: printed.value, slope };
};

describe("U as reported, over the whole range of a scope in each of its forms", () => {
  it("is never below the capability at that point, in °C or in µV, as a number or as printed", () => {
    fc.assert(
      fc.property(
        capabilities,
        temperatures,
        figure(4),
        fc.constantFrom(1 as const, 2 as const),
        (capability, celsius, expanded, digits) => {
          const at = capabilityAt(capability, celsius);
          if (!at.ok) throw new Error(at.problem.message);
          const { placed, printed, slope } = printedAt([line(capability)], celsius, expanded, digits);
          expect(placed).toMatchObject({ state: "inside", capabilityCelsius: at.value, source });
          expect(placed.isRaised).toBe(expanded < at.value);
          // Half an ulp of the decimal that is printed.
          expect(read(printed.expandedCelsius)).toBeGreaterThanOrEqual(at.value * (1 - 1e-12));
          expect(read(printed.expandedMicrovolt)).toBeGreaterThanOrEqual(at.value * slope * (1 - 1e-12));
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("is left as computed outside, however small", () => {
    fc.assert(
      fc.property(capabilities, figure(4), (capability, expanded) => {
        const { placed } = printedAt([line(capability)], to + 0.001, expanded, 2);
        expect(placed).toMatchObject({ state: "outside", isRaised: false, capabilityCelsius: null });
      }),
    );
  });

  it("takes the smaller of two lines that meet at one temperature, in whichever order they stand", () => {
    const low: ScopeLine = { type: "K", fromCelsius: 0, toCelsius: 600, expandedCelsius: 0.9, source };
    const high: ScopeLine = { ...low, fromCelsius: 600, toCelsius: 1200, expandedCelsius: 1.8 };
    for (const lines of [
      [low, high],
      [high, low],
    ])
      expect(printedAt(lines, 600, 0.5, 2).placed.capabilityCelsius).toBe(0.9);
  });
});

describe("a whole evaluation against a formula or a table", () => {
  const evidence = buildEvidence({ sensors: ["K"] });
  const against = (capability: Exclude<Capability, { kind: "constant" }>) =>
    measured({ ...evidence, scope: [{ ...line(capability), type: "K" }] });

  it("holds each point against the value at its own temperature", () => {
    const [point] = against({ kind: "proportional", constantCelsius: 1, perCelsius: 0.01 });
    const celsius = point?.nominalCelsius ?? 0;
    expect(point?.scope.capabilityCelsius).toBeCloseTo(1 + 0.01 * celsius, 12);
    expect(point?.scope.isRaised).toBe(true);
  });

  it("raises a table row with U = 0, where a function is made to pass through zero", () => {
    const nominals = [300, 500, 700, 900, 1100];
    const choice = {
      ...lineThroughZero,
      allowBelow: { downToCelsius: 0, agreement: "invented" },
      table: { unit: "celsius", step: 100 },
    } as const;
    const asked = askFunction({ over: nominals, choice });
    const type = asked.sensors[0]?.type ?? "N";
    const [fitted] = evaluate({
      ...asked,
      scope: [{ type, fromCelsius: -40, toCelsius: 1200, expandedCelsius: 0.5, source }],
    }).functions;
    const zero = fitted?.table.rows.find(({ degrees }) => degrees === 0);
    expect(zero?.expanded).toBe(0);
    expect(read(zero?.printedExpanded ?? "0")).toBeGreaterThanOrEqual(0.5);
  });
});

describe("a line of the scope in a file", () => {
  const problems = (scope: unknown) => {
    const outcome = parseEvidence({ ...buildEvidence(), scope });
    return outcome.ok ? [] : outcome.problems.map(({ path }) => path);
  };
  const bare = { type: "K", fromCelsius: 0, toCelsius: 1000, source };

  it("is read as before where it is a number", () => {
    expect(problems([{ ...bare, expandedCelsius: 1.2 }])).toEqual([]);
  });

  it("states its capability once", () => {
    const formula = { kind: "proportional", constantCelsius: 1, perCelsius: 0 };
    expect(problems([bare])).toEqual(["scope[0].expandedCelsius"]);
    expect(problems([{ ...bare, expandedCelsius: 1, capability: formula }])).toEqual([
      "scope[0].expandedCelsius",
    ]);
    expect(problems([{ ...bare, capability: formula }])).toEqual([]);
  });

  it("is refused where a table does not reach, or a formula falls to nothing", () => {
    const point = (celsius: number) => ({ celsius, expandedCelsius: 1 });
    const table = (...celsius: number[]) => ({ kind: "table", points: celsius.map(point) });
    expect(problems([{ ...bare, capability: table(0, 900) }])).toEqual(["scope[0].capability"]);
    expect(problems([{ ...bare, capability: table(0, 1000, 500) }])).toContain("scope[0].capability.points");
    const falling = { kind: "polynomial", coefficientsCelsius: [1, -0.001] };
    expect(problems([{ ...bare, capability: falling }])).toEqual(["scope[0].capability"]);
    expect(problems([{ ...bare, toCelsius: 999, capability: falling }])).toEqual([]);
  });
});
