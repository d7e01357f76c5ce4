import { found, type Outcome } from "@/lib/metrology/outcome";
import { combineAndCover } from "./combine-and-cover";
import { emfLines, type SensorForBudget } from "./emf-budget";
import type { Budget, EvaluatedCoverage, SharedError } from "./evaluation";
import type { Evidence } from "./schema";
import { covarianceRow, type FlatEffect, flattened, sharedErrors } from "./share-errors";
import type { TemperatureStage } from "./temperature-stage";

export type Budgets = {
  readonly temperature: Budget;
  readonly emf: Budget;
  readonly shared: readonly SharedError[];
  /** Both stages as one list in µV. */
  readonly effects: readonly FlatEffect[];
  readonly coverageFactor: number;
  readonly coverage: EvaluatedCoverage;
};

/** Both stages of one point's budget, combined once over all effects with what they share. */
export function budgets(
  evidence: Evidence,
  sensor: SensorForBudget,
  stage: TemperatureStage,
  referenceCelsius: number,
): Outcome<Budgets> {
  const slope = sensor.sensitivity.microvoltPerCelsius;
  const { references, lines, combined, degreesOfFreedom: freedom } = stage;
  const temperature = lines.map((line) => ({ ...line }));
  const emf = emfLines(evidence, sensor, stage);
  const effects = flattened(emf, temperature, slope);
  const shared = sharedErrors(evidence, sensor, references, temperature);
  const covered = combineAndCover(effects, shared, evidence.coverage);
  if (!covered.ok) return covered;
  const { standardUncertainty, degreesOfFreedom, coverageFactor, coverage } = covered.value;
  const whole = standardUncertainty * standardUncertainty;
  const rows = [...emf, covarianceRow(evidence, shared, effects)];
  for (const line of temperature) {
    line.share = (line.variance * slope * slope) / whole;
    if (line.key === "reference.repeatability") line.estimate = referenceCelsius;
  }
  for (const line of rows) line.share = line.variance / whole;
  return found({
    temperature: { unit: "°C", contributions: temperature, combined, degreesOfFreedom: freedom },
    emf: { unit: "µV", contributions: rows, combined: standardUncertainty, degreesOfFreedom },
    shared,
    effects,
    coverageFactor,
    coverage,
  });
}
