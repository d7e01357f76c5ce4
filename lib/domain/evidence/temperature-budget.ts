import { combine } from "@/lib/metrology/uncertainty/combine";
import type { Mounted, Reference } from "./bench";
import { contribution, type LineSpec, type Part } from "./contribution";
import type { Budget } from "./evaluation";
import type { Evidence, UncertaintyInput } from "./schema";
import type { Sensitivity } from "./sensitivity";

export type ReferenceForBudget = {
  readonly mounted: Mounted<Reference>;
  readonly sensitivity: Sensitivity;
  readonly indicatedMicrovolt: number;
  /** Reference junction at 0 °C. */
  readonly emfMicrovolt: number;
};

/**
 * First stage (°C): the temperature at the sensor, EA-4/02 S5's lines for t_X plus the reference's own
 * inhomogeneity and the voltmeter's drift. Meter and junction come again in the second stage with the
 * opposite sign; leaving that correlation out makes U larger, never smaller
 * (decisions/0010-two-stage-budget.md).
 */
export function temperatureBudget(
  evidence: Evidence,
  references: readonly ReferenceForBudget[],
  referenceCelsius: number,
): Budget {
  const { voltmeter, scanner, configuration } = evidence;
  const line = (
    key: string,
    label: string,
    symbol: string,
    input: (reference: ReferenceForBudget) => UncertaintyInput,
    change: (reference: ReferenceForBudget) => Partial<Part> = () => ({}),
  ): LineSpec => ({
    key,
    label,
    symbol,
    estimate: 0,
    stage: "°C",
    parts: references.map((reference) => ({
      input: input(reference),
      emfMicrovolt: reference.emfMicrovolt,
      perMicrovolt: 1 / reference.sensitivity.microvoltPerCelsius,
      perCelsius: 1,
      ...change(reference),
    })),
  });
  const indicated = (reference: ReferenceForBudget) => ({ emfMicrovolt: reference.indicatedMicrovolt });
  const atJunction = ({ sensitivity }: ReferenceForBudget) => ({
    perMicrovolt: -1 / sensitivity.microvoltPerCelsius,
    perCelsius: -sensitivity.atJunctionMicrovoltPerCelsius / sensitivity.microvoltPerCelsius,
  });
  const repeatability = line(
    "reference.repeatability",
    "Reference repeatability",
    "t_S",
    () => evidence.referenceRepeatability,
  );
  const lines: LineSpec[] = [
    { ...repeatability, estimate: referenceCelsius },
    line(
      "reference.calibration",
      "Reference calibration",
      "δt_S",
      (r) => r.mounted.item.calibrationUncertainty,
    ),
    line(
      "voltmeter.calibration@reference",
      "Voltmeter calibration",
      "δV_iS1",
      () => voltmeter.calibrationUncertainty,
      indicated,
    ),
    line(
      "voltmeter.drift@reference",
      "Voltmeter drift since its calibration",
      "δV_iS3",
      () => voltmeter.drift,
      indicated,
    ),
    line(
      "voltmeter.resolution@reference",
      "Voltmeter resolution",
      "δV_iS2",
      () => voltmeter.resolution,
      indicated,
    ),
    line("scanner.parasitic@reference", "Scanner parasitic emf", "δV_R", () => scanner.parasitic),
    line(
      "junction@reference",
      "Reference junction temperature",
      "δt_0S",
      (r) => r.mounted.junction.uncertainty,
      atJunction,
    ),
    line("reference.drift", "Reference drift since its calibration", "δt_D", (r) => r.mounted.item.drift),
    line("reference.inhomogeneity", "Reference inhomogeneity", "δt_H", (r) => r.mounted.item.inhomogeneity),
    line(
      "furnace.uniformity",
      "Furnace non-uniformity",
      "δt_F",
      () => configuration.characterisation.uniformity,
    ),
  ];
  const contributions = lines.map(contribution);
  const { standardUncertainty, degreesOfFreedom } = combine(contributions);
  return { unit: "°C", contributions, combined: standardUncertainty, degreesOfFreedom };
}
