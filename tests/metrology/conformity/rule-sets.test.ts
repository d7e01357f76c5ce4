import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { astmE230 } from "@/lib/metrology/conformity/astm-e230";
import { iec60584 } from "@/lib/metrology/conformity/iec-60584-1";
import type { ToleranceRuleSet } from "@/lib/metrology/conformity/rule-set";
import { tolerance, toleranceStandard } from "@/lib/metrology/conformity/tolerance";
import { toleranceIn } from "@/lib/metrology/conformity/tolerance-in";
import { astmVectors, iecVectors } from "./tolerance-values";

const celsiusIn = (set: ToleranceRuleSet, type: string, toleranceClass: string, t: number) => {
  const at = toleranceIn(set, type, toleranceClass, t);
  return at.kind === "defined" ? at.celsius : null;
};

describe.each([
  [iec60584, iecVectors],
  [astmE230, astmVectors],
] as const)("%#: a standard", (set, vectors) => {
  it.each(vectors)("type %s class %s at %d °C: %d", (type, toleranceClass, t, expected) => {
    const found = celsiusIn(set, type, toleranceClass, t);
    if (expected === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(expected, 12);
  });

  it("names itself, its edition and its source", () => {
    expect(set.title).not.toBe("");
    expect(set.edition).toMatch(/^20\d\d/);
    expect(set.source).toContain(set.title.split(" ")[0]);
    expect(set.id).toMatch(/^[a-z0-9-]+$/);
  });

  it("takes fixed parts and percentages in °C", () => {
    const rules = Object.values(set.types).flatMap((classes) => Object.values(classes).flat());
    expect([...new Set(rules.map(({ unit }) => unit))]).toEqual(["°C"]);
  });

  it("never falls as the temperature leaves zero, and never jumps", () => {
    for (const [type, classes] of Object.entries(set.types)) {
      for (const [name, rules] of Object.entries(classes)) {
        for (const rule of rules) {
          let before: number | null = null;
          for (let t = Math.max(rule.fromCelsius, 0); t <= rule.toCelsius; t += 0.5) {
            const here = celsiusIn(set, type, name, t);
            if (here === null) throw new Error(`${type} ${name} ${t}`);
            if (before !== null) {
              expect(here).toBeGreaterThanOrEqual(before);
              expect(here - before).toBeLessThan(0.01);
            }
            before = here;
          }
        }
      }
    }
  });

  it("ends exactly at its ends", () => {
    for (const [type, classes] of Object.entries(set.types)) {
      for (const [name, rules] of Object.entries(classes)) {
        const from = Math.min(...rules.map((rule) => rule.fromCelsius));
        const to = Math.max(...rules.map((rule) => rule.toCelsius));
        expect(celsiusIn(set, type, name, from)).not.toBeNull();
        expect(celsiusIn(set, type, name, to)).not.toBeNull();
        expect(celsiusIn(set, type, name, from - 1e-9)).toBeNull();
        expect(celsiusIn(set, type, name, to + 1e-9)).toBeNull();
      }
    }
  });
});

describe("tolerance", () => {
  it("is IEC 60584-1:2013", () => {
    expect(toleranceStandard).toBe("IEC 60584-1:2013");
    expect(tolerance("K", "1", 1000)).toEqual({ kind: "defined", celsius: 4 });
  });

  it("says which ranges a class has, and where the temperature lies", () => {
    expect(toleranceIn(astmE230, "K", "standard", 1300)).toEqual({
      kind: "not-defined",
      reason:
        "ASTM E230/E230M defines class standard of type K from 0 °C to 1260 °C and from -200 °C to 0 °C, not at 1300 °C",
    });
    expect(toleranceIn(astmE230, "S", "special", (600 - 32) / 1.8 + 2000)).toHaveProperty(
      "reason",
      expect.stringMatching(/, not at 2315\.56 °C$/),
    );
    expect(toleranceIn(astmE230, "K", "standard", Number.NaN)).toHaveProperty(
      "reason",
      expect.stringMatching(/, not at NaN °C$/),
    );
    expect(toleranceIn(iec60584, "B", "1", 900)).toEqual({
      kind: "not-defined",
      reason: "IEC 60584-1:2013 has no class 1 for type B",
    });
    expect(toleranceIn(iec60584, "Au/Pt", "1", 900).kind).toBe("not-defined");
    expect(toleranceIn(iec60584, "constructor", "name", 900).kind).toBe("not-defined");
    expect(toleranceIn(iec60584, "K", "toString", 900).kind).toBe("not-defined");
  });

  it("carries the note of a guide", () => {
    const below = toleranceIn(astmE230, "T", "special", -100);
    expect(below.kind === "defined" && below.note).toContain("guide");
    const ordered = toleranceIn(astmE230, "E", "standard", -100);
    expect(ordered.kind === "defined" && ordered.note).toContain("only where ordered");
    expect(toleranceIn(astmE230, "T", "special", 100)).toStrictEqual({ kind: "defined", celsius: 0.5 });
    // Both stretches of the class hold at 0 °C: the first one, which needs no note, says the same.
    expect(toleranceIn(astmE230, "T", "standard", 0)).toStrictEqual({ kind: "defined", celsius: 1 });
    expect(toleranceIn(astmE230, "K", "standard", -1)).toStrictEqual({
      kind: "defined",
      celsius: 2.2,
      note: "holds only where ordered for temperatures below 0 °C",
    });
  });

  it("is the larger part everywhere, never a table of joins", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1200, noNaN: true }), (t) => {
        expect(celsiusIn(iec60584, "K", "2", t)).toBeCloseTo(Math.max(2.5, 0.0075 * t), 12);
      }),
    );
  });
});

describe("the base of a percentage", () => {
  const inFahrenheit = (origin: number, base: number): ToleranceRuleSet => ({
    id: "own",
    title: "Own",
    edition: "2026",
    source: "invented for the test",
    types: {
      K: {
        agreed: [
          { fromCelsius: -50, toCelsius: 1200, fixed: 2, percent: 0.4, unit: "°F", origin, base },
          { fromCelsius: 1000, toCelsius: 1100, fixed: 9, percent: 0, unit: "°C", origin: 0, base: 0 },
        ],
      },
    },
  });

  it("in °F is 0.4 % of the °F temperature: at 1000 °C 7.328 °F, 4.071 °C", () => {
    // 1832 °F · 0.004 = 7.328 °F = 4.0711… °C; in °C it would have been 4.0.
    expect(celsiusIn(inFahrenheit(0, 0), "K", "agreed", 900)).toBeCloseTo(((1652 * 0.4) / 100 / 9) * 5, 12);
    expect(celsiusIn(inFahrenheit(0, 0), "K", "agreed", 1000)).toBeCloseTo(4.0711111111, 9);
  });

  it("in °F, the fixed part too: 2 °F is 1.11 °C", () => {
    expect(celsiusIn(inFahrenheit(0, 0), "K", "agreed", 0)).toBeCloseTo(1.1111111111, 9);
    expect(celsiusIn(inFahrenheit(0, 0), "K", "agreed", -40)).toBeCloseTo(1.1111111111, 9);
  });

  it("starts at its origin with its base", () => {
    // 1652 °F lies 652 °F above 1000 °F: 3 + 2.608 °F.
    expect(celsiusIn(inFahrenheit(1000, 3), "K", "agreed", 900)).toBeCloseTo(5.608 / 1.8, 12);
  });

  it("where two stretches overlap the smaller holds, in whatever order", () => {
    const set = inFahrenheit(0, 0);
    const { K } = set.types;
    const turned = { ...set, types: { K: { agreed: [...(K?.agreed ?? [])].reverse() } } };
    for (const t of [1000, 1050, 1100]) {
      expect(celsiusIn(set, "K", "agreed", t)).toBe(celsiusIn(turned, "K", "agreed", t));
      expect(celsiusIn(set, "K", "agreed", t)).toBeLessThan(5);
    }
  });
});
