import { found, type Outcome } from "../../outcome";
import { type Correlation, correlationFactor } from "../correlation-factor";
import {
  type DrawnInput,
  drawnInput,
  type MonteCarloInput,
  type Shape,
  unitUncertainty,
} from "./drawn-input";

/**
 * The inputs of a linear model with correlations as inputs without: what hangs together is drawn as one.
 *
 * Errors that are fully correlated (|r| = 1 throughout) and of one shape are one error that acts in several places: one
 * draw of that shape, with the sum of the signed amounts. All other groups are drawn as the normal distribution they have
 * jointly (JCGM 101:2008, 6.4.8: the multivariate normal is the one it assigns to correlated inputs); a weighted sum of
 * jointly normal inputs is normal with the variance of JCGM 100:2008, eq. 16, so one draw replaces the group. If any of
 * them is Student's t, the group is Student's t with the smallest ν, as `combineCorrelated` counts it.
 *
 * Amounts in the result's unit. Refuses what `drawnInput` and `correlationFactor` refuse.
 */
export function independentInputs(
  inputs: readonly MonteCarloInput[],
  correlations: readonly Correlation[],
): Outcome<readonly DrawnInput[]> {
  const factor = correlationFactor(inputs.length, correlations);
  if (!factor.ok) return factor;
  const drawn: DrawnInput[] = [];
  for (const input of inputs) {
    const one = drawnInput(input);
    if (!one.ok) return one;
    drawn.push(one.value);
  }
  const coefficients = drawn.map((_, i) => {
    const row = new Float64Array(drawn.length);
    row[i] = 1;
    return row;
  });
  for (const { first, second, coefficient } of correlations) {
    (coefficients[first] as Float64Array)[second] = coefficient;
    (coefficients[second] as Float64Array)[first] = coefficient;
  }
  const acting = groups(coefficients).map((places) => asOne(places, drawn, coefficients));
  return found(acting.filter(({ amount }) => amount !== 0));
}

/** Places that hang together through any chain of coefficients other than 0, each list in ascending order. */
function groups(coefficients: readonly Float64Array[]): number[][] {
  const group = coefficients.map((_, place) => place);
  coefficients.forEach((row, i) => {
    row.forEach((coefficient, j) => {
      const [kept, merged] = [group[i], group[j]];
      if (coefficient === 0 || kept === merged) return;
      group.forEach((of, place) => {
        if (of === merged) group[place] = kept as number;
      });
    });
  });
  return [...new Set(group)].map((of) => group.flatMap((at, place) => (at === of ? [place] : [])));
}

function asOne(
  places: readonly number[],
  drawn: readonly DrawnInput[],
  coefficients: readonly Float64Array[],
): DrawnInput {
  const members = places.map((place) => drawn[place] as DrawnInput);
  const first = members[0] as DrawnInput;
  if (members.length === 1) return first;
  const between = (i: number, j: number): number => (coefficients[i] as Float64Array)[j] as number;
  const acting = members.filter(({ amount }) => amount !== 0);
  const isOneError = places.every((i) => places.every((j) => Math.abs(between(i, j)) === 1));
  const shape = acting[0]?.shape ?? first.shape;
  if (isOneError && acting.every((member) => isAlike(member.shape, shape))) {
    // Against the first member's direction; the distributions are symmetric, so that the sign of the whole is free.
    const amount = members.reduce((sum, member, n) => {
      return sum + between(places[0] as number, places[n] as number) * member.amount;
    }, 0);
    return { shape, amount };
  }
  const effects = members.map((member) => member.amount * unitUncertainty(member.shape));
  let variance = 0;
  effects.forEach((one, n) => {
    effects.forEach((other, m) => {
      variance += between(places[n] as number, places[m] as number) * one * other;
    });
  });
  // Rounding can leave a variance that is 0 just below it.
  return { shape: jointShape(acting), amount: Math.sqrt(Math.max(0, variance)) };
}

function isAlike(one: Shape, other: Shape): boolean {
  if (one.kind === "trapezoidal") return other.kind === one.kind && other.beta === one.beta;
  if (one.kind === "student")
    return other.kind === one.kind && other.degreesOfFreedom === one.degreesOfFreedom;
  return one.kind === other.kind;
}

function jointShape(members: readonly DrawnInput[]): Shape {
  const freedoms = members.flatMap(({ shape }) => (shape.kind === "student" ? [shape.degreesOfFreedom] : []));
  return freedoms.length === 0
    ? { kind: "normal" }
    : { kind: "student", degreesOfFreedom: Math.min(...freedoms) };
}
