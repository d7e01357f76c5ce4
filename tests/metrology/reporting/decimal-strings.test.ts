import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyCmc } from "@/lib/metrology/reporting/apply-cmc";
import { reportValue } from "@/lib/metrology/reporting/report-value";
import { roundUncertainty } from "@/lib/metrology/reporting/round-uncertainty";

/**
 * A decimal of up to fifteen digits, as its whole number and its decimals. The float64 nearest to it is what the engine
 * gets; what it prints is judged on the decimal itself, in whole numbers.
 */
const decimals = fc.record({
  digits: fc.bigInt({ min: 1n, max: 999_999_999_999_999n }),
  places: fc.integer({ min: 0, max: 12 }),
});
type Typed = { readonly digits: bigint; readonly places: number };

const numberOf = ({ digits, places }: Typed) => Number(`${digits}e-${places}`);

/** Printed decimal text as a whole number of 10^−30. */
const fine = (text: string): bigint => {
  const [whole = "", fraction = ""] = text.replace("-", "").split(".");
  return BigInt(whole + fraction.padEnd(30, "0"));
};
const fineOf = ({ digits, places }: Typed): bigint => digits * 10n ** BigInt(30 - places);

const printed = (value: number, expanded: number, digits: 1 | 2, cmc: number | null = null) => {
  const reported = reportValue(value, expanded, digits, cmc);
  if (!reported.ok) throw new Error(reported.problem.message);
  return reported.value;
};

/** Half a unit of the last printed place, in 10^−30. */
const halfUnit = (places: number): bigint => 10n ** BigInt(30 - places) / 2n;

describe("what is printed, over decimal strings", () => {
  it("the value lies within half its last digit, and a tie goes to the even digit", () => {
    fc.assert(
      fc.property(decimals, decimals, fc.constantFrom(1 as const, 2 as const), (value, expanded, digits) => {
        const reported = printed(numberOf(value), numberOf(expanded), digits);
        const off = fine(reported.value) - fineOf(value);
        const size = off < 0n ? -off : off;
        const half = halfUnit(reported.decimals);
        expect(size <= half).toBe(true);
        if (size === half) expect((fine(reported.value) / (2n * half)) % 2n).toBe(0n);
      }),
      { numRuns: 1000 },
    );
  });

  it("ties typed as decimals go to the even digit, however their float64 lies", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), fc.integer({ min: 0, max: 6 }), (whole, places) => {
        // whole and a half units of the last place.
        const tie = Number(`${whole}5e-${places + 1}`);
        const even = whole % 2 === 0 ? whole : whole + 1;
        const reported = printed(tie, Number(`1e-${places}`), 1);
        expect(reported.decimals).toBe(places);
        expect(fine(reported.value)).toBe(BigInt(even) * 10n ** BigInt(30 - places));
      }),
      { numRuns: 1000 },
    );
  });

  it("U hides at most 5 %, adds less than one unit, and has as many digits as asked for", () => {
    fc.assert(
      fc.property(decimals, fc.constantFrom(1 as const, 2 as const), (expanded, digits) => {
        const reported = printed(0, numberOf(expanded), digits);
        const exact = fineOf(expanded);
        const text = fine(reported.expanded);
        expect(text * 100n >= exact * 95n).toBe(true);
        expect(text - exact < 2n * halfUnit(reported.decimals)).toBe(true);
        expect(
          reported.expanded
            .replace(/^[0.]*/, "")
            .replace(".", "")
            .replace(/0+$/, "").length,
        ).toBeLessThanOrEqual(digits);
        // At two digits, or where less than 5 % is lost, it is the nearest.
        if (digits === 2) {
          const off = text - exact;
          expect((off < 0n ? -off : off) <= halfUnit(reported.decimals)).toBe(true);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it("U is never printed below the capability", () => {
    fc.assert(
      fc.property(decimals, decimals, fc.constantFrom(1 as const, 2 as const), (expanded, cmc, digits) => {
        const reported = printed(0, numberOf(expanded), digits, numberOf(cmc));
        expect(fine(reported.expanded) >= fineOf(cmc)).toBe(true);
        const above = [fineOf(expanded), fineOf(cmc)].map((one) => fine(reported.expanded) - one);
        expect(above.some((one) => one < 2n * halfUnit(reported.decimals))).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it("a negative value prints as its opposite", () => {
    fc.assert(
      fc.property(decimals, decimals, (value, expanded) => {
        const one = printed(numberOf(value), numberOf(expanded), 2).value;
        const other = printed(-numberOf(value), numberOf(expanded), 2).value;
        expect(other).toBe(/[1-9]/.test(one) ? `-${one}` : one);
      }),
    );
  });
});

describe("the capability", () => {
  it.each([
    [0.5, 0.4, { expanded: 0.5, origin: "computed" }],
    [0.4, 0.4, { expanded: 0.4, origin: "computed" }],
    [0.3, 0.4, { expanded: 0.4, origin: "capability" }],
    [0.3, null, { expanded: 0.3, origin: "computed" }],
  ])("U = %d against a CMC of %s", (expanded, cmc, reported) => {
    expect(applyCmc(expanded, cmc)).toEqual({ ok: true, value: reported });
  });

  it.each([
    [Number.NaN, 0.4, "not-finite"],
    [0, 0.4, "outside-range"],
    [-1, null, "outside-range"],
    [1, Number.NaN, "not-finite"],
    [1, Number.POSITIVE_INFINITY, "not-finite"],
    [1, 0, "outside-range"],
    [1, -0.1, "outside-range"],
  ])("refuses U = %d with a CMC of %s", (expanded, cmc, kind) => {
    const refusal = applyCmc(expanded, cmc);
    expect(refusal.ok ? "" : refusal.problem.kind).toBe(kind);
    expect(refusal.ok ? "" : refusal.problem.message).not.toBe("");
    expect(roundUncertainty(expanded, 2, cmc).ok).toBe(false);
    expect(reportValue(1, expanded, 2, cmc).ok).toBe(false);
  });

  it("rounds up where the nearest digit would fall below it, and only then", () => {
    for (const [u, cmc, digits, text] of [
      [0.444, 0.444, 2, "0.45"],
      [0.444, 0.44, 2, "0.44"],
      [0.3, 0.444, 2, "0.45"],
      [0.3, 0.446, 2, "0.45"],
      [0.3, 0.44, 2, "0.44"],
      [0.3, 0.3, 1, "0.3"],
      [0.996, 0.992, 2, "1.0"],
      [0.2, 0.9901, 2, "1.0"],
      [0.2, 1.01, 2, "1.1"],
      [0.2, 1.01, 1, "2"],
    ] as const) {
      const rounded = roundUncertainty(u, digits, cmc);
      expect(rounded.ok && rounded.value.text).toBe(text);
    }
  });

  it("refuses any other number of digits", () => {
    for (const digits of [0, 3, 1.5, Number.NaN]) {
      const refusal = roundUncertainty(1, digits as 1);
      expect(refusal.ok ? "" : refusal.problem.kind).toBe("outside-range");
      expect(refusal.ok ? "" : refusal.problem.message).toContain("one or two");
    }
  });
});
