import { all, type BigNumber, create, type FactoryFunctionMap } from "mathjs";

/** An independent engine: 64 decimal digits, none of our code. */
export const math = create(all as FactoryFunctionMap, {
  number: "BigNumber",
  precision: 64,
  matrix: "Array",
});

export type Big = BigNumber;

/** The float64 itself, to its last bit, not the decimal number it is written as. */
export const big = (x: number): Big => math.bignumber(exactDecimal(x)) as Big;

function exactDecimal(x: number): string {
  // 60 digits hold every float64 of the sizes that occur here.
  return x === 0 ? "0" : x.toPrecision(60);
}

export const total = (values: readonly Big[]): Big => values.reduce((a, b) => a.plus(b), big(0));

/** |ours − theirs| in units of theirs. */
export const apart = (ours: number, theirs: Big): number => {
  const difference = big(ours).minus(theirs).abs();
  return (theirs.isZero() ? difference : difference.div(theirs.abs())).toNumber();
};

/** ∫ f by Romberg's scheme on the trapezoid rule with 2ⁿ intervals, in the oracle's digits. */
export function integral(f: (x: Big) => Big, from: Big, to: Big, levels = 9): Big {
  const width = to.minus(from);
  let row: Big[] = [f(from).plus(f(to)).times(width).div(2)];
  for (let level = 1; level <= levels; level += 1) {
    const step = width.div(2 ** level);
    const inner: Big[] = [];
    for (let n = 1; n < 2 ** level; n += 2) inner.push(f(from.plus(step.times(n))));
    const next: Big[] = [(row[0] as Big).div(2).plus(total(inner).times(step))];
    for (const [k, coarse] of row.entries()) {
      const fine = next[k] as Big;
      next.push(fine.plus(fine.minus(coarse).div(4 ** (k + 1) - 1)));
    }
    row = next;
  }
  return row.at(-1) as Big;
}
