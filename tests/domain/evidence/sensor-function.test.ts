import { describe, expect, it } from "vitest";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { askFunction, lineThroughZero } from "./ask-function";
import { evaluate } from "./measured";

/* The correction table as printed. Invented sensors and scopes. */

const over = [300, 500, 700, 900, 1100];
type Unit = "celsius" | "fahrenheit";
const asked = (unit: Unit, digits: 1 | 2, inhomogeneity = 0.0005) =>
  askFunction({ over, digits, inhomogeneity, choice: { ...lineThroughZero, table: { unit, step: 100 } } });
const tableOf = (evidence: EvidenceInput) => {
  const [fitted] = evaluate(evidence).functions;
  if (!fitted) throw new Error("no function");
  return fitted.table;
};
/** Leading zeros say nothing; nor do the zeros of whole tens, which stand for digits rounded away. */
const significant = (text: string): number =>
  (text.includes(".") ? text.replace(".", "").replace(/^0+/, "") : text.replace(/^0+|0+$/g, "")).length;

describe("the digits of a correction table (ILAC-P14:09/2020, 5)", () => {
  const cases = (["celsius", "fahrenheit"] as const).flatMap((unit) =>
    ([1, 2] as const).flatMap((digits) =>
      [0.0001, 0.0005, 0.001, 0.0015, 0.002, 0.003, 0.005, 0.01, 0.03].map(
        (width) => [unit, digits, width] as const,
      ),
    ),
  );
  it.each(cases)("in %s at %d digits, inhomogeneity %d: no row prints more", (unit, digits, width) => {
    const { rows, decimals } = tableOf(asked(unit, digits, width));
    for (const row of rows) {
      expect(significant(row.printedExpanded)).toBeLessThanOrEqual(digits);
      expect(Number(row.printedExpanded)).toBeGreaterThanOrEqual(row.expanded - 1e-12);
      for (const text of [row.printedExpanded, row.printedCorrection])
        expect(text.split(".")[1]?.length ?? 0).toBe(Math.max(0, decimals));
    }
    // The largest has all the digits that were agreed, or the carry took one: 0.991 stands as 1.0.
    const largest = rows.reduce((a, b) => (b.expanded > a.expanded ? b : a));
    expect(largest.expanded * 10 ** decimals).toBeGreaterThan(10 ** (digits - 1) * 0.9);
  });

  it("takes the digits from the U of its own unit: ±1.01 to 1.48 in °F is not one of two digits", () => {
    const celsius = tableOf(asked("celsius", 2, 0.0001));
    const fahrenheit = tableOf(asked("fahrenheit", 2, 0.0001));
    expect(Math.max(...celsius.rows.map(({ expanded }) => expanded))).toBeLessThan(1);
    expect(Math.max(...fahrenheit.rows.map(({ expanded }) => expanded))).toBeGreaterThan(1);
    expect(celsius.decimals).toBe(2);
    expect(fahrenheit.decimals).toBe(1);
  });
});

describe("a correction table within an accredited scope", () => {
  const scope = [
    { type: "N", fromCelsius: 0, toCelsius: 700, expandedCelsius: 3, source: "scope, line 5 (invented)" },
  ] as const;
  const plain = tableOf(asked("celsius", 2));
  const scoped = tableOf({ ...asked("celsius", 2), scope: [...scope] });

  it("prints no U below the capability at the row's own temperature, and marks rows outside", () => {
    expect(scoped.rows.map(({ degrees }) => degrees)).toEqual([
      300, 400, 500, 600, 700, 800, 900, 1000, 1100,
    ]);
    for (const row of scoped.rows) {
      const isInside = row.degrees <= 700;
      expect(row.scope).toMatchObject({ state: isInside ? "inside" : "outside", isRaised: isInside });
      if (isInside) expect(row.printedExpanded).toBe("3.0");
      else expect(Number(row.printedExpanded)).toBeLessThan(3);
    }
    expect(scoped.rows.map(({ expanded }) => expanded)).toEqual(plain.rows.map(({ expanded }) => expanded));
  });

  it("does so in °F as a difference: 3 °C is 5.4 °F", () => {
    const { rows } = tableOf({ ...asked("fahrenheit", 2), scope: [...scope] });
    expect(rows[0]?.printedExpanded).toBe("5.4");
  });

  it("leaves a larger U, and says of a table without a scope that none is stated", () => {
    const wide = tableOf({ ...asked("celsius", 2), scope: [{ ...scope[0], expandedCelsius: 0.001 }] });
    expect(wide.rows.map(({ printedExpanded }) => printedExpanded)).toEqual(
      plain.rows.map(({ printedExpanded }) => printedExpanded),
    );
    expect(wide.rows[0]?.scope).toMatchObject({ state: "inside", isRaised: false });
    expect(plain.rows.every((row) => row.scope.state === "not-stated")).toBe(true);
  });
});
