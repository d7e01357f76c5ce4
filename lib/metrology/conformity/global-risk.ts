import { PI, SQRT_2 } from "../number/constants";
import { exponential } from "../number/exponential";
import { normalProbability } from "../number/normal";
import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";

export type GlobalRiskInput = {
  /** What the items of the process are like before any is measured: normal, mean and standard deviation. */
  readonly priorMean: number;
  readonly priorStandardDeviation: number;
  readonly standardUncertainty: number;
  readonly lowerTolerance: number;
  readonly upperTolerance: number;
  /** Acceptance limits: the tolerance limits less the guard band. */
  readonly lowerAcceptance: number;
  readonly upperAcceptance: number;
};

export type GlobalRisk = {
  /** R_C: an item lies outside the tolerance and is accepted. */
  readonly consumer: number;
  /** R_P: an item lies inside the tolerance and is rejected. */
  readonly producer: number;
};

/** Nodes and weights of the ten-point Gauss–Legendre rule on −1 to 1 (Abramowitz & Stegun, table 25.4), the upper half. */
const nodes = [
  [0.14887433898163122, 0.29552422471475287],
  [0.4333953941292472, 0.26926671930999635],
  [0.6794095682990244, 0.21908636251598204],
  [0.8650633666889845, 0.1494513491505806],
  [0.9739065285171717, 0.06667134430868814],
] as const;

/** Beyond so many standard deviations a normal density adds less than 1e-18. */
const REACH = 9;

/**
 * Global consumer's and producer's risk of a process and a decision rule (JCGM 106:2012, 9.5):
 * R_C = ∫ outside T of f(η)·P(accept | η) dη, R_P = ∫ inside T of f(η)·P(reject | η) dη, with a normal prior f and a normal
 * measurement, P(accept | η) = Φ((A_U − η)/u) − Φ((A_L − η)/u).
 * By Gauss–Legendre on panels no longer than one standard deviation wherever either factor bends: about 1e-13 absolute.
 * Symbols: prior mean and standard deviation, u, T_L, T_U, A_L, A_U, all in one unit; infinite limits make it one-sided.
 * Refused: NaN, a prior deviation or u not above 0 and finite, limits turned round (an empty acceptance zone among them).
 */
export function globalRisk(input: GlobalRiskInput): Outcome<GlobalRisk> {
  const { priorMean: mean, priorStandardDeviation: sigma, standardUncertainty: u } = input;
  const { lowerTolerance, upperTolerance, lowerAcceptance, upperAcceptance } = input;
  if (![mean, sigma, u].every((x) => Number.isFinite(x))) {
    return refused("not-finite", `a process of ${mean} ± ${sigma} measured with u = ${u} is no process`);
  }
  if (!(sigma > 0 && u > 0)) {
    return refused("outside-range", `standard deviations ${sigma} and ${u} must be above zero`);
  }
  if (!(lowerTolerance < upperTolerance && lowerAcceptance < upperAcceptance)) {
    return refused("outside-range", "the limits leave nothing between them");
  }
  const consumer: number[] = [];
  const producer: number[] = [];
  for (const [from, to] of panels(input)) {
    const isInside = from >= lowerTolerance && to <= upperTolerance;
    const acceptedMass = integrate(from, to, (x) => density(x, mean, sigma) * accepted(x, input));
    const rejectedMass = integrate(from, to, (x) => density(x, mean, sigma) * rejected(x, input));
    if (isInside) producer.push(rejectedMass);
    else consumer.push(acceptedMass);
  }
  return found({ consumer: sum(consumer), producer: sum(producer) });
}

function accepted(x: number, { upperAcceptance, lowerAcceptance, standardUncertainty: u }: GlobalRiskInput) {
  const high = (upperAcceptance - x) / u;
  const low = (lowerAcceptance - x) / u;
  // Difference taken in the lower tail, where Φ does not round to 1.
  return low > 0
    ? normalProbability(-low) - normalProbability(-high)
    : normalProbability(high) - normalProbability(low);
}

function rejected(x: number, { upperAcceptance, lowerAcceptance, standardUncertainty: u }: GlobalRiskInput) {
  return normalProbability((lowerAcceptance - x) / u) + normalProbability((x - upperAcceptance) / u);
}

function density(x: number, mean: number, sigma: number): number {
  const z = (x - mean) / sigma;
  return exponential((-z * z) / 2) / (sigma * SQRT_2 * Math.sqrt(PI));
}

/** The prior's reach, cut at every place where something bends: each limit, steps of σ about the mean, of u about A. */
function panels(input: GlobalRiskInput): readonly (readonly [number, number])[] {
  const { priorMean: mean, priorStandardDeviation: sigma, standardUncertainty: u } = input;
  const from = mean - REACH * sigma;
  const to = mean + REACH * sigma;
  const cuts = [input.lowerTolerance, input.upperTolerance];
  for (let i = -REACH; i <= REACH; i += 1) {
    cuts.push(mean + i * sigma, input.lowerAcceptance + i * u, input.upperAcceptance + i * u);
  }
  const inside = cuts.filter((cut) => cut > from && cut < to).sort((a, b) => a - b);
  const all: (readonly [number, number])[] = [];
  let start = from;
  for (const cut of [...inside, to]) {
    all.push([start, cut]);
    start = cut;
  }
  return all;
}

function integrate(from: number, to: number, f: (x: number) => number): number {
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  const terms = nodes.map(([x, weight]) => weight * (f(middle - half * x) + f(middle + half * x)));
  return half * sum(terms);
}
