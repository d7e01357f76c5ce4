import { combine } from "@/lib/metrology/uncertainty/combine";
import type { Mounted, Sensor } from "./bench";
import { contribution, type Part } from "./contribution";
import type { Budget, EvaluatedContribution } from "./evaluation";
import type { Evidence, UncertaintyInput } from "./schema";
import type { Sensitivity } from "./sensitivity";

export type SensorForBudget = {
  readonly mounted: Mounted<Sensor>;
  readonly sensitivity: Sensitivity;
  readonly indicatedMicrovolt: number;
  readonly emfMicrovolt: number;
  readonly carriedCelsius: number;
};

/** The line through which the whole first stage acts on the second. */
export const FURNACE_TEMPERATURE = "furnace.temperature";

/**
 * Second stage (µV): the sensor's emf at the nominal, EA-4/02 S5's lines for V_X plus the sensor's
 * inhomogeneity and the voltmeter's drift.
 */
export function emfBudget(evidence: Evidence, sensor: SensorForBudget, temperature: Budget): Budget {
  const { voltmeter, scanner } = evidence;
  const { item, junction } = sensor.mounted;
  const slope = sensor.sensitivity.microvoltPerCelsius;
  const line = (
    key: string,
    label: string,
    symbol: string,
    input: UncertaintyInput,
    change: Partial<Part> = {},
    estimate = 0,
  ): EvaluatedContribution => {
    const part = { input, emfMicrovolt: sensor.emfMicrovolt, perMicrovolt: 1, perCelsius: slope, ...change };
    return contribution({ key, label, symbol, estimate, stage: "µV", parts: [part] });
  };
  const indicated = { emfMicrovolt: sensor.indicatedMicrovolt };
  const atJunction = { perMicrovolt: -1, perCelsius: -sensor.sensitivity.atJunctionMicrovoltPerCelsius };
  const contributions = [
    line(
      "sensor.repeatability",
      "Sensor repeatability",
      "V_iX",
      item.repeatability,
      {},
      sensor.indicatedMicrovolt,
    ),
    line(
      "voltmeter.calibration@sensor",
      "Voltmeter calibration",
      "δV_iX1",
      voltmeter.calibrationUncertainty,
      indicated,
    ),
    line(
      "voltmeter.drift@sensor",
      "Voltmeter drift since its calibration",
      "δV_iX3",
      voltmeter.drift,
      indicated,
    ),
    line("voltmeter.resolution@sensor", "Voltmeter resolution", "δV_iX2", voltmeter.resolution, indicated),
    line("scanner.parasitic@sensor", "Scanner parasitic emf", "δV_R", scanner.parasitic),
    line("sensor.lead", "Extension or compensating lead", "δV_LX", item.lead),
    furnaceTemperature(sensor, temperature),
    line("junction@sensor", "Reference junction temperature", "δt_0X", junction.uncertainty, atJunction),
    line("sensor.inhomogeneity", "Sensor inhomogeneity", "δV_HX", item.inhomogeneity),
  ];
  const { standardUncertainty, degreesOfFreedom } = combine(flattened(contributions, temperature, slope));
  return { unit: "µV", contributions, combined: standardUncertainty, degreesOfFreedom };
}

function furnaceTemperature(sensor: SensorForBudget, temperature: Budget): EvaluatedContribution {
  const slope = sensor.sensitivity.microvoltPerCelsius;
  return {
    key: FURNACE_TEMPERATURE,
    label: "Furnace temperature",
    symbol: "δt_X",
    estimate: sensor.carriedCelsius,
    standardUncertainty: temperature.combined,
    unit: "°C",
    distribution: "normal",
    degreesOfFreedom: temperature.degreesOfFreedom,
    sensitivity: slope,
    sensitivityUnit: "µV/°C",
    effect: slope * temperature.combined,
    source: "temperature budget",
  };
}

export type FlatEffect = {
  readonly key: string;
  readonly effect: number;
  readonly degreesOfFreedom: number | null;
};

/** Both stages as one list of effects in µV, for Welch–Satterthwaite and for naming what dominates. */
export function flattened(
  contributions: readonly EvaluatedContribution[],
  temperature: Budget,
  microvoltPerCelsius: number,
): FlatEffect[] {
  return [
    ...contributions.filter(({ key }) => key !== FURNACE_TEMPERATURE),
    ...temperature.contributions.map((line) => ({ ...line, effect: line.effect * microvoltPerCelsius })),
  ].map(({ key, effect, degreesOfFreedom }) => ({ key, effect, degreesOfFreedom }));
}
