import { logarithm } from "@/lib/metrology/number/logarithm";
import { normalQuantile } from "@/lib/metrology/number/normal";
import { standardDeviation } from "@/lib/metrology/uncertainty/distribution";
import { linearSampler } from "@/lib/metrology/uncertainty/monte-carlo/linear-sampler";
import { modelSampler } from "@/lib/metrology/uncertainty/monte-carlo/model-sampler";
import { type MonteCarloResult, monteCarlo } from "@/lib/metrology/uncertainty/monte-carlo/monte-carlo";
import type { Sampler } from "@/lib/metrology/uncertainty/monte-carlo/sampler";
import { jcgm101Additive, jcgm102Polar, logarithmExample, TRIALS } from "../vectors/jcgm-101";
import { checks } from "./check";
import { unwrap } from "./unwrap";

const workspace = new Float64Array(TRIALS);

/** Each example is run once, when the first of its values is asked for. */
function run(makeSampler: () => Sampler, stream: number): () => MonteCarloResult {
  let result: MonteCarloResult | null = null;
  return () => {
    result ??= unwrap(
      monteCarlo(
        makeSampler(),
        { seed: 101, stream, probability: 0.95, trials: { kind: "fixed", count: TRIALS } },
        workspace,
      ),
    );
    return result;
  };
}

const four = (distribution: Parameters<typeof standardDeviation>[0]) => () =>
  unwrap(
    linearSampler(
      0,
      [1, 1, 1, 1].map((sensitivity) => ({ sensitivity, distribution })),
    ),
  );
const normals = run(four({ kind: "normal", standardDeviation: 1 }), 1);
const rectangles = run(four({ kind: "rectangular", halfWidth: Math.sqrt(3) }), 2);

const x = { kind: "rectangular", halfWidth: 0.5 } as const;
const logarithms = run(
  () =>
    unwrap(modelSampler([{ estimate: 0.6, distribution: x }], [], ([value]) => logarithm(value as number))),
  3,
);
const linearU = standardDeviation(x) / 0.6;

/** Runs of one function of a complex number whose parts are normal with u = 0.01. */
function polar(real: number, correlation: number, of: (re: number, im: number) => number, stream: number) {
  const distribution = { kind: "normal", standardDeviation: 0.01 } as const;
  const inputs = [real, 0].map((estimate) => ({ estimate, distribution }));
  const correlations = correlation === 0 ? [] : [{ first: 0, second: 1, coefficient: correlation }];
  return run(
    () => unwrap(modelSampler(inputs, correlations, ([re, im]) => of(re as number, im as number))),
    stream,
  );
}

const magnitude = (re: number, im: number) => Math.sqrt(re * re + im * im);
const phase = (re: number, im: number) => Math.atan2(im, re);
const near = { magnitude: polar(0.001, 0, magnitude, 4), phase: polar(0.001, 0, phase, 5) };
const tied = { magnitude: polar(0.001, 0.9, magnitude, 6), phase: polar(0.001, 0.9, phase, 7) };
const further = { magnitude: polar(0.01, 0.9, magnitude, 8), phase: polar(0.01, 0.9, phase, 9) };

export const monteCarloChecks = [
  ...checks(jcgm101Additive, {
    normalU: () => normals().standardUncertainty,
    normalLow: () => normals().symmetric.low,
    normalHigh: () => normals().symmetric.high,
    rectangularU: () => rectangles().standardUncertainty,
    rectangularLow: () => rectangles().symmetric.low,
    rectangularHigh: () => rectangles().symmetric.high,
  }),
  ...checks(logarithmExample, {
    linearY: () => logarithm(0.6),
    linearU: () => linearU,
    linearHigh: () => logarithm(0.6) + normalQuantile(0.975) * linearU,
    y: () => logarithms().estimate,
    u: () => logarithms().standardUncertainty,
    low: () => logarithms().shortest.low,
    high: () => logarithms().shortest.high,
  }),
  ...checks(jcgm102Polar, {
    magnitude: () => near.magnitude().estimate,
    uMagnitude: () => near.magnitude().standardUncertainty,
    uPhase: () => near.phase().standardUncertainty,
    magnitudeCorrelated: () => tied.magnitude().estimate,
    uMagnitudeCorrelated: () => tied.magnitude().standardUncertainty,
    phaseCorrelated: () => tied.phase().estimate,
    uPhaseCorrelated: () => tied.phase().standardUncertainty,
    magnitudeFurther: () => further.magnitude().estimate,
    uMagnitudeFurther: () => further.magnitude().standardUncertainty,
    phaseFurther: () => further.phase().estimate,
    uPhaseFurther: () => further.phase().standardUncertainty,
  }),
];
