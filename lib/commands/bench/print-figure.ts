import type { Figure } from "./measure";

/** Three digits: a ratio is read by size. */
export const fixed = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));

/** One figure with its baseline, and how many of a unit it makes a second. */
export const printFigure = (
  figure: Figure,
  unit?: { readonly name: string; readonly count: number },
): void => {
  console.log(`\n${figure.name}`);
  console.log(`  ours      ${fixed(figure.oursMilliseconds)} ms  ${figure.ours}`);
  console.log(`  baseline  ${fixed(figure.baselineMilliseconds)} ms  ${figure.baseline}`);
  console.log(`  ratio     ${fixed(figure.oursMilliseconds / figure.baselineMilliseconds)} × the baseline`);
  if (unit)
    console.log(
      `  rate      ${fixed((unit.count / figure.oursMilliseconds) * 1000)} ${unit.name} per second`,
    );
};
