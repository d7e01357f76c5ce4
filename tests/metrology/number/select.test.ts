import { describe, expect, it } from "vitest";
import { createStream, uniform } from "@/lib/metrology/number/random";
import { select } from "@/lib/metrology/number/select";

const drawn = (length: number, of: (u: number) => number): Float64Array => {
  const stream = createStream(11);
  return Float64Array.from({ length }, () => of(uniform(stream)));
};

const expectSelected = (values: Float64Array, k: number): void => {
  const sorted = values.slice().sort();
  select(values, k);
  expect(values[k]).toBe(sorted[k]);
  expect(values.subarray(0, k).every((x) => x <= (sorted[k] as number))).toBe(true);
  expect(values.subarray(k).every((x) => x >= (sorted[k] as number))).toBe(true);
  expect(
    values
      .slice()
      .sort()
      .every((x, i) => x === sorted[i]),
  ).toBe(true);
};

describe("select", () => {
  it.each([
    ["random", 12_000, (u: number) => u],
    ["few different", 12_000, (u: number) => Math.floor(u * 3)],
    ["all equal", 9_000, () => 1.5],
    ["short", 57, (u: number) => u - 0.5],
  ] as const)("finds every place among %s values", (_, length, of) => {
    for (const part of [0, 0.025, 0.3, 0.5, 0.95, 0.999]) {
      expectSelected(drawn(length, of), Math.floor(part * length));
    }
    expectSelected(drawn(length, of), length - 1);
  });

  it("finds it in sorted and in reversed lists", () => {
    const ascending = Float64Array.from({ length: 10_000 }, (_, i) => i);
    for (const k of [0, 499, 5000, 9999]) {
      expectSelected(ascending.slice(), k);
      expectSelected(ascending.slice().reverse(), k);
    }
  });

  it("leaves alone what lies outside its range", () => {
    const values = Float64Array.of(9, 8, 7, 6, 5, 4, 3);
    select(values, 3, 2, 5);
    expect([...values]).toEqual([9, 8, 5, 6, 7, 4, 3]);
    select(values, 2, 2, 3);
    expect(values[2]).toBe(5);
  });
});
