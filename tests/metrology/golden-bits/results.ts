import { removeLinearDrift } from "@/lib/metrology/comparison/remove-linear-drift";
import { typeAFromBlocks } from "@/lib/metrology/comparison/type-a-from-blocks";
import { conformanceProbability } from "@/lib/metrology/conformity/conformance-probability";
import { decideConformity } from "@/lib/metrology/conformity/decide-conformity";
import { globalRisk } from "@/lib/metrology/conformity/global-risk";
import { correctionTable } from "@/lib/metrology/deviation/correction-table";
import { fitDeviation } from "@/lib/metrology/deviation/fit-deviation";
import { pointCovariance } from "@/lib/metrology/deviation/point-covariance";
import { linearFit } from "@/lib/metrology/number/linear-fit";
import { ewmaChart } from "@/lib/metrology/quality/ewma-chart";
import { individualsChart } from "@/lib/metrology/quality/individuals-chart";
import { normalizedError } from "@/lib/metrology/quality/normalized-error";
import { reportInFahrenheit } from "@/lib/metrology/reporting/report-in-fahrenheit";
import { reportValue } from "@/lib/metrology/reporting/report-value";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { combineCorrelated } from "@/lib/metrology/uncertainty/combine-correlated";
import { chooseCoverage, dominantPolicy } from "@/lib/metrology/uncertainty/coverage";
import { linearSampler } from "@/lib/metrology/uncertainty/monte-carlo/linear-sampler";
import { monteCarlo } from "@/lib/metrology/uncertainty/monte-carlo/monte-carlo";

const correlations = [{ first: 0, second: 2, coefficient: 0.7 }];

/** Budgets: combined, covered by each method, and propagated from a seed. */
export function* budgets(): Generator<unknown> {
  const effects = [
    { effect: 0.31, degreesOfFreedom: 12, distribution: "normal" },
    { effect: -0.17, degreesOfFreedom: null, distribution: "rectangular" },
    { effect: 0.05, degreesOfFreedom: 4, distribution: "normal" },
  ];
  const combined = combineCorrelated(effects, correlations);
  yield combined;
  if (combined.ok) yield chooseCoverage(effects, correlations, combined.value);
  const led = [{ effect: 1.1, degreesOfFreedom: null, distribution: "rectangular" }, ...effects.slice(1)];
  const ledBy = combineCorrelated(led, []);
  if (ledBy.ok) yield chooseCoverage(led, [], ledBy.value, dominantPolicy);
  const sampler = linearSampler(
    1000.3,
    [
      { sensitivity: 1, distribution: { kind: "normal", standardDeviation: 0.31 } },
      { sensitivity: -1, distribution: { kind: "rectangular", halfWidth: 0.29 } },
      { sensitivity: 1, distribution: { kind: "normal", standardDeviation: 0.05 } },
      { sensitivity: 2, distribution: { kind: "student", scale: 0.02, degreesOfFreedom: 4 } },
      { sensitivity: 1, distribution: { kind: "triangular", halfWidth: 0.1 } },
      { sensitivity: 1, distribution: { kind: "arcsine", halfWidth: 0.1 } },
      { sensitivity: 1, distribution: { kind: "trapezoidal", halfWidth: 0.1, beta: 0.4 } },
    ],
    correlations,
  );
  yield sampler.ok;
  if (!sampler.ok) return;
  const options = { seed: 20261014, stream: 3, probability: 0.9545 };
  const workspace = new Float64Array(20_000);
  yield monteCarlo(sampler.value, { ...options, trials: { kind: "fixed", count: 20_000 } }, workspace);
  yield workspace;
}

/** A deviation function with errors that its points share, and the table made of it. */
export function* deviations(): Generator<unknown> {
  const celsius = [200, 400, 600, 800, 1000];
  const covariance = pointCovariance([
    { key: "reference", isShared: true, effects: celsius.map((t) => 0.004 * t) },
    { key: "own", isShared: false, effects: celsius.map(() => 2.3) },
  ]);
  yield covariance;
  if (!covariance.ok) return;
  for (const isThroughZero of [true, false]) {
    const values = [4.1, 11.9, 15.2, 26.4, 31.7];
    const deviation = fitDeviation({
      quantity: "emf",
      points: celsius.map((t, n) => ({
        celsius: t,
        value: values[n] as number,
        own: covariance.value.own[n] as number,
      })),
      covariance: covariance.value.covariance,
      isThroughZero,
      degreeRule: { kind: "f-test", maximumDegree: 3, probability: 0.95 },
      uncertaintyMethod: "propagated",
      scatter: "larger",
      allowBelow: null,
    });
    yield deviation;
    if (!deviation.ok) continue;
    const made = { deviation: deviation.value, reference: referenceFunctions.K, coverageFactor: 2 };
    for (const unit of ["celsius", "fahrenheit"] as const) {
      yield correctionTable({ ...made, unit, step: 50, decimals: 2 });
    }
  }
}

/** Drift, type A, verdicts and what is printed. */
export function* verdicts(): Generator<unknown> {
  const seconds = Array.from({ length: 60 }, (_, n) => 10 * n);
  const values = seconds.map((t, n) => 9587.1 + 0.0003 * t + 0.07 * ((n * 7) % 11) - 0.35);
  yield linearFit(seconds, values);
  yield typeAFromBlocks({ seconds, values }, 100);
  const polarity = seconds.map((_, n) => (n % 2 === 0 ? 1 : -1));
  const microvolts = values.map((value, n) => value * (n % 2 === 0 ? 1 : -1) + 0.4);
  yield removeLinearDrift({ seconds, microvolts, polarity }, 295);
  for (let error = -3; error <= 3; error += 0.23) {
    yield conformanceProbability(error, 0.7, -2.5, 2.5);
    for (const rule of [
      { kind: "guarded", guardBandRatio: 1 },
      { kind: "target-risk", falseAcceptance: 0.01, isBinary: false },
    ] as const) {
      const state = { standardUncertaintyCelsius: 0.4, expandedCelsius: 0.83, degreesOfFreedom: 9 };
      yield decideConformity({ errorCelsius: error, ...state, toleranceCelsius: 2.5, rule });
    }
    yield reportValue(1000 + error, 0.1 + error * error, 2);
    yield reportInFahrenheit(1000 + error, 0.1 + error * error, 1, "difference");
  }
  yield globalRisk({
    ...{ priorMean: 0.1, priorStandardDeviation: 1.1, standardUncertainty: 0.4 },
    ...{ lowerTolerance: -2.5, upperTolerance: 2.5, lowerAcceptance: -1.7, upperAcceptance: 1.7 },
  });
}

/** Control charts and comparisons between laboratories. */
export function* quality(): Generator<unknown> {
  const values = [0.31, 0.28, 0.35, 0.3, 0.27, 0.33, 0.29, 0.36, 0.32, 0.3, 0.34, 0.41];
  yield individualsChart(values);
  yield ewmaChart(values, 0.31, 0.03);
  yield normalizedError({ value: 1000.31, uncertainty: 0.81 }, { value: 1000.02, uncertainty: 0.3 }, 0.2);
}
