import { budgetLines, type LineKey } from "./budget-lines";
import { contribution, type Line } from "./contribution";
import type { SensorForBudget } from "./emf-budget";
import type { SharedError } from "./evaluation";
import { sharesJunction } from "./junction-sharing";
import type { Evidence } from "./schema";
import type { ReferenceForBudget } from "./temperature-budget";

/** One line's effect on the sensor's emf at the nominal, µV, with its sign. */
export type FlatEffect = {
  readonly key: LineKey;
  readonly label: string;
  readonly effect: number;
  readonly distribution: Line["distribution"];
  readonly degreesOfFreedom: number | null;
};

/**
 * What acts through the sensor's reading and through the references' as well. The result is
 * V_X = V_iX + S_X·(t_n − t_X): an error of the meter enters once directly and once through the references
 * with the opposite sign, and so does one of a shared junction (decisions/0013-full-correlation.md).
 */
export function sharedErrors(
  evidence: Evidence,
  sensor: SensorForBudget,
  references: readonly ReferenceForBudget[],
  temperature: readonly Line[],
): SharedError[] {
  const { voltmeter, junction } = evidence.correlation;
  const fraction = sharedFraction(sensor, references, temperature);
  return [
    {
      first: "voltmeter.calibration@sensor",
      second: "voltmeter.calibration@reference",
      coefficient: voltmeter.coefficient,
    },
    {
      first: "voltmeter.drift@sensor",
      second: "voltmeter.drift@reference",
      coefficient: voltmeter.coefficient,
    },
    { first: "junction@sensor", second: "junction@reference", coefficient: junction.coefficient * fraction },
  ];
}

/** How much of the references' junction line comes from junctions that the sensor shares: 1 if all do. */
function sharedFraction(
  sensor: SensorForBudget,
  references: readonly ReferenceForBudget[],
  temperature: readonly Line[],
): number {
  const sharing = references.filter(({ mounted }) => sharesJunction(mounted, sensor.mounted));
  if (sharing.length === references.length) return 1;
  const whole = temperature.find(({ key }) => key === "junction@reference")?.effect ?? 0;
  if (whole === 0) return 0;
  const shared = sharing.reduce((sum, reference) => sum + junctionEffect(reference), 0);
  return shared / references.length / whole;
}

function junctionEffect({ mounted, sensitivity, emfMicrovolt }: ReferenceForBudget): number {
  const { microvoltPerCelsius: slope, atJunctionMicrovoltPerCelsius: atJunction } = sensitivity;
  const part = {
    input: mounted.junction.uncertainty,
    emfMicrovolt,
    perMicrovolt: -1 / slope,
    perCelsius: -atJunction / slope,
  };
  return contribution({ key: "junction@reference", estimate: 0, stage: "°C", parts: [part] }).effect;
}

/** Both stages as one list of signed effects in µV. A hotter furnace means less emf at the nominal. */
export function flattened(
  emf: readonly Line[],
  temperature: readonly Line[],
  microvoltPerCelsius: number,
): FlatEffect[] {
  const scaled =
    (scale: number) =>
    ({ key, label, effect, distribution, degreesOfFreedom }: Line): FlatEffect => ({
      key,
      label,
      effect: scale * effect,
      distribution,
      degreesOfFreedom,
    });
  return [
    ...emf.filter(({ kind }) => kind === "input").map(scaled(1)),
    ...temperature.map(scaled(-microvoltPerCelsius)),
  ];
}

/** The covariance as a row of the emf budget: twice the sum of r·effect·effect, signed, µV². */
export function covarianceRow(
  evidence: Evidence,
  shared: readonly SharedError[],
  effects: readonly FlatEffect[],
): Line {
  const { voltmeter, junction } = evidence.correlation;
  const effectOf = (key: string): number => effects.find((line) => line.key === key)?.effect ?? 0;
  const variance = shared.reduce(
    (sum, { first, second, coefficient }) => sum + 2 * coefficient * effectOf(first) * effectOf(second),
    0,
  );
  const size = Math.sqrt(Math.abs(variance));
  const sign = variance < 0 ? -1 : 1;
  return {
    kind: "covariance",
    key: "shared",
    ...budgetLines.shared,
    excludes: [],
    estimate: null,
    standardUncertainty: size,
    unit: "µV",
    distribution: "none",
    degreesOfFreedom: null,
    sensitivity: sign,
    sensitivityUnit: "1",
    effect: sign * size,
    // −0 would print a sign.
    variance: variance === 0 ? 0 : variance,
    share: 0,
    source: `voltmeter r = ${voltmeter.coefficient}: ${voltmeter.reason}; junction r = ${junction.coefficient}: ${junction.reason}`,
  };
}
