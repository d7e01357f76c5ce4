import type { Mounted, Sensor } from "./bench";
import { budgetLines, type LineKey } from "./budget-lines";
import { contribution, type Line, type Part } from "./contribution";
import { actingAt } from "./resolve-input";
import type { Evidence } from "./schema";
import type { Sensitivity } from "./sensitivity";
import type { UncertaintyInput } from "./uncertainty-input";

export type SensorForBudget = {
  readonly mounted: Mounted<Sensor>;
  readonly sensitivity: Sensitivity;
  /** As stated, or from the window's own block means. */
  readonly repeatability: UncertaintyInput;
  /** As stated, or the share of the tolerance that the rule takes. */
  readonly inhomogeneity: UncertaintyInput;
  readonly indicatedMicrovolt: number;
  readonly emfMicrovolt: number;
  readonly nominalCelsius: number;
  readonly carriedCelsius: number;
};

/** A stage taken as one quantity. */
export type StageTotal = { readonly combined: number; readonly degreesOfFreedom: number | null };

/**
 * Second stage (µV): the sensor's emf at the nominal. EA-4/02 S5's lines for V_X, and what an assessor expects
 * beside them today. The covariance that meter and junction bring is a row of its own (`share-errors.ts`).
 */
export function emfLines(evidence: Evidence, sensor: SensorForBudget, temperature: StageTotal): Line[] {
  const { voltmeter, scanner } = evidence;
  const { item, junction } = sensor.mounted;
  const line = (key: LineKey, input: UncertaintyInput, change: Partial<Part> = {}): Line =>
    contribution({
      key,
      estimate: key === "sensor.repeatability" ? sensor.indicatedMicrovolt : 0,
      stage: "µV",
      parts: [
        {
          input: actingAt(input, sensor.nominalCelsius),
          emfMicrovolt: sensor.emfMicrovolt,
          perMicrovolt: 1,
          perCelsius: sensor.sensitivity.microvoltPerCelsius,
          ...change,
        },
      ],
    });
  const indicated = { emfMicrovolt: sensor.indicatedMicrovolt };
  const atJunction = { perMicrovolt: -1, perCelsius: -sensor.sensitivity.atJunctionMicrovoltPerCelsius };
  return [
    line("sensor.repeatability", sensor.repeatability),
    line("voltmeter.calibration@sensor", voltmeter.calibrationUncertainty, indicated),
    line("voltmeter.drift@sensor", voltmeter.drift, indicated),
    line("voltmeter.resolution@sensor", voltmeter.resolution, indicated),
    line("scanner.parasitic@sensor", scanner.parasitic),
    line("heater.pickup@sensor", evidence.heaterPickup),
    line("sensor.lead", item.lead),
    furnaceTemperature(sensor, temperature),
    line("junction@sensor", junction.uncertainty, atJunction),
    line("junction.spread@sensor", junction.spread, atJunction),
    line("sensor.inhomogeneity", sensor.inhomogeneity),
    line("sensor.immersion", item.immersion),
    line("sensor.shunting", item.shunting),
    line("sensor.hysteresis", item.hysteresis),
  ];
}

/** The line through which the whole first stage acts on the second. */
function furnaceTemperature(sensor: SensorForBudget, temperature: StageTotal): Line {
  const slope = sensor.sensitivity.microvoltPerCelsius;
  const effect = slope * temperature.combined;
  return {
    kind: "stage",
    key: "furnace.temperature",
    ...budgetLines["furnace.temperature"],
    excludes: [],
    estimate: sensor.carriedCelsius,
    standardUncertainty: temperature.combined,
    unit: "°C",
    distribution: "normal",
    degreesOfFreedom: temperature.degreesOfFreedom,
    sensitivity: slope,
    sensitivityUnit: "µV/°C",
    effect,
    variance: effect * effect,
    share: 0,
    source: "temperature budget",
  };
}
