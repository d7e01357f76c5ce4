import type { Mounted, Reference } from "./bench";
import type { LineKey } from "./budget-lines";
import { contribution, type Line, type Part } from "./contribution";
import { furnaceInputAt } from "./furnace-input-at";
import { sharesJunction } from "./junction-sharing";
import { actingAt } from "./resolve-input";
import type { Evidence } from "./schema";
import type { Sensitivity } from "./sensitivity";
import type { UncertaintyInput } from "./uncertainty-input";

export type ReferenceForBudget = {
  readonly mounted: Mounted<Reference>;
  readonly sensitivity: Sensitivity;
  /** As stated, or from the points of the certificate. */
  readonly interpolation: UncertaintyInput;
  /** As stated, or from its rates with time and use. */
  readonly drift: UncertaintyInput;
  /** As stated, or from the window's own block means. */
  readonly repeatability: UncertaintyInput;
  readonly indicatedMicrovolt: number;
  /** Reference junction at 0 °C. */
  readonly emfMicrovolt: number;
};

type InputOf = (reference: ReferenceForBudget) => UncertaintyInput;
type Change = (reference: ReferenceForBudget) => Partial<Part>;
type Between = (one: number, other: number) => number;

/**
 * First stage (°C): the temperature at the sensor. EA-4/02 S5's lines for t_X, and what an assessor expects
 * beside them today. Several references are their mean; how far averaging takes anything off, the evidence's
 * correlations between references say (1: nothing).
 */
export function temperatureLines(
  evidence: Evidence,
  references: readonly ReferenceForBudget[],
  referenceCelsius: number,
  nominalCelsius: number,
): Line[] {
  const { voltmeter, scanner } = evidence;
  const { uniformity, axial, radial, gradient } = evidence.configuration.characterisation;
  const { calibration, drift, own } = evidence.correlation.references;
  const line = (key: LineKey, input: InputOf, change: Change = none, between?: Between): Line =>
    contribution({
      key,
      estimate: key === "reference.repeatability" ? referenceCelsius : 0,
      stage: "°C",
      parts: references.map((reference) => ({
        input: actingAt(input(reference), nominalCelsius),
        emfMicrovolt: reference.emfMicrovolt,
        perMicrovolt: 1 / reference.sensitivity.microvoltPerCelsius,
        perCelsius: 1,
        ...change(reference),
      })),
      ...(between ? { between } : {}),
    });
  const fixed =
    (coefficient: number): Between =>
    () =>
      coefficient;
  const itself = fixed(own.coefficient);
  const junctions: Between = (one, other) =>
    sharesJunction(references[one]?.mounted, references[other]?.mounted) ? 1 : own.coefficient;
  return [
    // Stated for the references' mean; from block means, each reference's own.
    line(
      "reference.repeatability",
      (r) => r.repeatability,
      none,
      evidence.referenceRepeatability.kind === "block-means" ? fixed(0) : undefined,
    ),
    line(
      "reference.calibration",
      (r) => r.mounted.item.calibrationUncertainty,
      none,
      fixed(calibration.coefficient),
    ),
    // One meter at nearly one emf: its error is the same for all references.
    line("voltmeter.calibration@reference", () => voltmeter.calibrationUncertainty, indicated),
    line("voltmeter.drift@reference", () => voltmeter.drift, indicated),
    line("voltmeter.resolution@reference", () => voltmeter.resolution, indicated, itself),
    line("scanner.parasitic@reference", () => scanner.parasitic, none, itself),
    line("heater.pickup@reference", () => evidence.heaterPickup, none, itself),
    line("junction@reference", (r) => r.mounted.junction.uncertainty, atJunction, junctions),
    line("junction.spread@reference", (r) => r.mounted.junction.spread, atJunction, itself),
    line("reference.drift", (r) => r.drift, none, fixed(drift.coefficient)),
    line("reference.interpolation", (r) => r.interpolation, none, fixed(calibration.coefficient)),
    line("reference.inhomogeneity", (r) => r.mounted.item.inhomogeneity, none, itself),
    line("furnace.uniformity", () => uniformity),
    line("furnace.axial", () => furnaceInputAt(axial, nominalCelsius)),
    line("furnace.radial", () => furnaceInputAt(radial, nominalCelsius)),
    line("furnace.gradient", () => gradient),
    line("furnace.stability", () => evidence.stability),
  ];
}

const none: Change = () => ({});
const indicated: Change = (reference) => ({ emfMicrovolt: reference.indicatedMicrovolt });
/** A junction that is warmer than taken lowers the emf, and with it the temperature read from it. */
const atJunction: Change = ({ sensitivity }) => ({
  perMicrovolt: -1 / sensitivity.microvoltPerCelsius,
  perCelsius: -sensitivity.atJunctionMicrovoltPerCelsius / sensitivity.microvoltPerCelsius,
});
