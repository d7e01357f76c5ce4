import { combine } from "@/lib/metrology/uncertainty/combine";
import { combineEffects } from "./combine-effects";
import type { Line } from "./contribution";
import { emfLines, type SensorForBudget } from "./emf-budget";
import type { Budget, SharedError } from "./evaluation";
import type { Evidence } from "./schema";
import { covarianceRow, type FlatEffect, flattened, sharedErrors } from "./share-errors";
import { type ReferenceForBudget, temperatureLines } from "./temperature-budget";

export type Budgets = {
  readonly temperature: Budget;
  readonly emf: Budget;
  readonly shared: readonly SharedError[];
  /** Both stages as one list in µV. */
  readonly effects: readonly FlatEffect[];
};

/** Both stages of one point's budget, combined once over all effects with what they share. */
export function budgets(
  evidence: Evidence,
  sensor: SensorForBudget,
  references: readonly ReferenceForBudget[],
  referenceCelsius: number,
): Budgets {
  const slope = sensor.sensitivity.microvoltPerCelsius;
  const temperature = temperatureLines(evidence, references, referenceCelsius, sensor.nominalCelsius);
  const stage = combine(temperature);
  const total = { combined: stage.standardUncertainty, degreesOfFreedom: stage.degreesOfFreedom };
  const emf = emfLines(evidence, sensor, total);
  const effects = flattened(emf, temperature, slope);
  const shared = sharedErrors(evidence, sensor, references, temperature);
  const indexOf = (key: string): number => effects.findIndex((line) => line.key === key);
  const { standardUncertainty, degreesOfFreedom } = combineEffects(
    effects,
    shared.map(({ first, second, coefficient }) => ({
      first: indexOf(first),
      second: indexOf(second),
      coefficient,
    })),
  );
  const whole = standardUncertainty * standardUncertainty;
  const withShare = (line: Line, scale: number) => ({
    ...line,
    share: whole > 0 ? (line.variance * scale) / whole : 0,
  });
  return {
    temperature: {
      unit: "°C",
      contributions: temperature.map((line) => withShare(line, slope * slope)),
      ...total,
    },
    emf: {
      unit: "µV",
      contributions: [...emf, covarianceRow(evidence, shared, effects)].map((line) => withShare(line, 1)),
      combined: standardUncertainty,
      degreesOfFreedom,
    },
    shared,
    effects,
  };
}
