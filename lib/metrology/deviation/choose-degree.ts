import { type LeastSquaresFit, leastSquares } from "../number/least-squares";
import { studentQuantile } from "../number/student";
import { found, type Outcome, refused } from "../outcome";

/**
 * `fixed`: as the procedure says. `f-test`: from the highest degree down, the first whose last term lowers χ² more
 * than chance would at this probability. `residuals`: the lowest degree at which no residual exceeds `limit` times
 * its point's own standard uncertainty.
 */
export type DegreeRule =
  | { readonly kind: "fixed"; readonly degree: number }
  | { readonly kind: "f-test"; readonly maximumDegree: number; readonly probability: number }
  | { readonly kind: "residuals"; readonly maximumDegree: number; readonly limit: number };

/** One degree as it was tried, for a person to see why another was taken. */
export type DegreeTried = {
  readonly degree: number;
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** Largest |residual|/own uncertainty. */
  readonly largestNormalisedResidual: number;
  /** F of its last term against the degree below, and what it must exceed; null where not tested. */
  readonly f: number | null;
  readonly criticalF: number | null;
  readonly isChosen: boolean;
};

export type ChosenDegree = {
  readonly degree: number;
  readonly fit: LeastSquaresFit;
  readonly tried: readonly DegreeTried[];
  readonly isRuleMet: boolean;
};

export type DegreeInput = {
  readonly celsius: readonly number[];
  readonly values: readonly number[];
  /** Standard uncertainties of the points' own parts: the weights are 1/u². */
  readonly own: readonly number[];
  readonly isThroughZero: boolean;
  readonly rule: DegreeRule;
};

type Fitted = { readonly degree: number; readonly fit: LeastSquaresFit; readonly largest: number };

/** Points nearer than this share of the span say nothing more of the curve's shape, e.g. one setpoint up and down. */
const DISTINCT_SHARE = 0.01;
const HIGHEST_DEGREE = 6;
/** A drop of χ² below this share of Σ(value/u)² is rounding. */
const ROUNDING = 1e-20;

/**
 * The degree of a deviation function by a stated rule, with all that was tried. Distinct temperatures ≥ degree + 2
 * (common practice, no source); degree from 1 through zero, else from 0, to 6. F of one term
 * = (χ²ₖ₋₁ − χ²ₖ)/(χ²ₖ/νₖ), critical value t²_p(νₖ), as F with 1 and ν degrees of freedom is Student's t squared
 * (Draper and Smith, Applied Regression Analysis: from memory). Temperatures in °C, values and own parts in one unit.
 * Problems: `too-few` points; `not-applicable` for a degree or probability that is none; those of `leastSquares`.
 */
export function chooseDegree(input: DegreeInput): Outcome<ChosenDegree> {
  const { rule } = input;
  const floor = input.isThroughZero ? 1 : 0;
  const asked = rule.kind === "fixed" ? rule.degree : rule.maximumDegree;
  if (!(Math.floor(asked) === asked && asked >= floor && asked <= HIGHEST_DEGREE)) {
    return refused("not-applicable", `degree ${asked}: a whole number from ${floor} to ${HIGHEST_DEGREE}`);
  }
  if (rule.kind === "f-test" && !(rule.probability > 0 && rule.probability < 1)) {
    return refused("not-applicable", `probability ${rule.probability} of the F-test: between 0 and 1`);
  }
  const distinct = distinctTemperatures(input.celsius);
  const lowest = rule.kind === "fixed" ? asked : floor;
  const highest = rule.kind === "fixed" ? asked : Math.min(asked, distinct - 2);
  if (highest < lowest || distinct < highest + 2) {
    return refused("too-few", `degree ${lowest} needs ${lowest + 2} distinct temperatures, not ${distinct}`);
  }
  const fits: Fitted[] = [];
  for (let degree = lowest; degree <= highest; degree += 1) {
    const fit = fitOfDegree(input, degree);
    if (!fit.ok) return fit;
    const largest = Math.max(
      ...fit.value.residuals.map((residual, i) => Math.abs(residual) / (input.own[i] as number)),
    );
    fits.push({ degree, fit: fit.value, largest });
  }
  return found(judge(input, fits));
}

/** How many temperatures there are, those within 1 % of the span of each other taken as one. °C. */
function distinctTemperatures(celsius: readonly number[]): number {
  const sorted = [...celsius].sort((a, b) => a - b);
  const gap = DISTINCT_SHARE * ((sorted.at(-1) as number) - (sorted[0] as number));
  let count = 0;
  let last = Number.NEGATIVE_INFINITY;
  for (const t of sorted) {
    if (t - last <= gap) continue;
    count += 1;
    last = t;
  }
  return count;
}

/** Columns t, t² … (through zero) or 1, t, t² …: `leastSquares` scales them. */
function fitOfDegree(input: DegreeInput, degree: number): Outcome<LeastSquaresFit> {
  const design = input.celsius.map((t) => powersOf(t, degree).slice(input.isThroughZero ? 1 : 0));
  return leastSquares(
    design,
    input.values,
    input.own.map((u) => 1 / (u * u)),
  );
}

/** 1, t, t² … t^degree. No unit is implied; no error cases (NaN stays NaN). Source: arithmetic. */
export function powersOf(t: number, degree: number): number[] {
  const powers = [1];
  for (let i = 1; i <= degree; i += 1) powers.push((powers[i - 1] as number) * t);
  return powers;
}

function judge(input: DegreeInput, fits: readonly Fitted[]): ChosenDegree {
  const { rule } = input;
  const first = fits[0] as Fitted;
  const last = fits.at(-1) as Fitted;
  const tests = fits.map((fitted, i) => termTest(input, fits[i - 1], fitted));
  let chosen = last;
  let isRuleMet = true;
  if (rule.kind === "f-test") chosen = fits.findLast((_, i) => tests[i]?.isSignificant) ?? first;
  if (rule.kind === "residuals") {
    const within = fits.find(({ largest }) => largest <= rule.limit);
    isRuleMet = within !== undefined;
    chosen = within ?? last;
  }
  const tried = fits.map(({ degree, fit, largest }, i) => ({
    degree,
    chiSquare: fit.chiSquare,
    degreesOfFreedom: fit.degreesOfFreedom,
    largestNormalisedResidual: largest,
    f: tests[i]?.f ?? null,
    criticalF: tests[i]?.criticalF ?? null,
    isChosen: degree === chosen.degree,
  }));
  return { degree: chosen.degree, fit: chosen.fit, tried, isRuleMet };
}

function termTest(
  input: DegreeInput,
  below: Fitted | undefined,
  above: Fitted,
): { readonly f: number; readonly criticalF: number; readonly isSignificant: boolean } | null {
  if (input.rule.kind !== "f-test" || !below) return null;
  const { chiSquare, degreesOfFreedom } = above.fit;
  const drop = Math.max(0, below.fit.chiSquare - chiSquare);
  const t = studentQuantile(input.rule.probability, degreesOfFreedom);
  const whole = input.values.reduce((total, value, i) => {
    const ratio = value / (input.own[i] as number);
    return total + ratio * ratio;
  }, 0);
  // Values that lie on the curve to the last bit leave no scatter to test against: there only the drop counts.
  const isReal = drop > ROUNDING * whole;
  const f = isReal ? drop / (chiSquare / degreesOfFreedom) : 0;
  return { f, criticalF: t * t, isSignificant: f > t * t };
}
