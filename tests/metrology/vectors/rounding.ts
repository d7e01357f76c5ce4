/** A value with its U, and both as printed at one or two significant digits of U. */
export type RoundingVector = {
  readonly value: number;
  readonly expanded: number;
  readonly digits: 1 | 2;
  readonly printed: readonly [value: string, expanded: string];
  readonly source: string;
};

const gum = "JCGM 100:2008, 7.2.6";
const rule = "own: ILAC-P14:09/2020 with the 5 % rule";

export const roundingVectors: readonly RoundingVector[] = [
  { value: 10.05762, expanded: 0.027, digits: 2, printed: ["10.058", "0.027"], source: gum },
  // The guide allows 10.47 to become 11; at two digits 10 loses 4.5 %, so the 5 % rule leaves it at 10.
  { value: 100, expanded: 10.47, digits: 2, printed: ["100", "10"], source: gum },
  { value: 0, expanded: 28.05, digits: 2, printed: ["0", "28"], source: gum },
  { value: 1, expanded: 0.0999, digits: 2, printed: ["1.00", "0.10"], source: rule },
  { value: 1, expanded: 0.1049, digits: 2, printed: ["1.00", "0.10"], source: rule },
  { value: 36228.77, expanded: 49.92, digits: 1, printed: ["36230", "50"], source: "EA-4/02 S5" },
  { value: 36228.77, expanded: 49.92, digits: 2, printed: ["36229", "50"], source: "EA-4/02 S5" },
  // One digit: 1.4 to 1 would lose 29 %, 1.04 to 1 loses 3.8 %.
  { value: 3.5, expanded: 1.4, digits: 1, printed: ["4", "2"], source: rule },
  { value: 3.5, expanded: 1.04, digits: 1, printed: ["4", "1"], source: rule },
  { value: 3.5, expanded: 1.06, digits: 1, printed: ["4", "2"], source: rule },
  { value: 0.25, expanded: 0.96, digits: 1, printed: ["0", "1"], source: rule },
  { value: 2.5, expanded: 3.2, digits: 1, printed: ["2", "4"], source: rule },
  { value: -0.004, expanded: 0.12, digits: 2, printed: ["0.00", "0.12"], source: rule },
  { value: -0.125, expanded: 0.5, digits: 2, printed: ["-0.12", "0.50"], source: rule },
  { value: 123456.7, expanded: 1234, digits: 2, printed: ["123500", "1200"], source: rule },
  { value: 99.96, expanded: 0.25, digits: 1, printed: ["100.0", "0.3"], source: rule },
];
