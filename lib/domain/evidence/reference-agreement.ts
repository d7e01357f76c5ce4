import { emf } from "@/lib/metrology/thermocouple/emf";
import { standardUncertainty } from "@/lib/metrology/uncertainty/standard-uncertainty";
import { type Mounted, mountBench, type Reference } from "./bench";
import { furnaceInputAt } from "./furnace-input-at";
import { sharesJunction } from "./junction-sharing";
import { interpolationAt, prepareReference } from "./prepare-reference";
import type { ReferenceTemperaturesInput } from "./reference-temperatures";
import { actingAt } from "./resolve-input";
import type { Evidence } from "./schema";
import { sensitivityInUse } from "./sensitivity";
import type { RepeatabilityInput, UncertaintyInput } from "./uncertainty-input";

export type AgreementInput = ReferenceTemperaturesInput &
  Pick<Evidence, "scanner" | "configuration" | "referenceRepeatability" | "sensitivities">;

const COVERAGE_FACTOR = 2;

/**
 * U (k = 2) of the difference of two references at a nominal, °C: what they may differ by before somebody
 * looks. With more than two, the largest of the pairs. 0 with one, where nothing is compared.
 *
 * What both share drops out of a difference: the voltmeter, a common junction, and certificates of one
 * laboratory, taken as fully correlated (only the difference of their u stays). Each brings its own
 * drift, inhomogeneity, place in the furnace, scanner channel, reading, and own junction or foreign
 * certificate.
 */
export function referenceAgreement(input: AgreementInput, nominalCelsius: number): number {
  const { references } = mountBench(input);
  let largest = 0;
  references.forEach((a, i) => {
    for (const b of references.slice(i + 1)) {
      const variance = pairVariance(input, a, b, nominalCelsius);
      largest = Math.max(largest, COVERAGE_FACTOR * Math.sqrt(variance));
    }
  });
  return largest;
}

function pairVariance(
  input: AgreementInput,
  a: Mounted<Reference>,
  b: Mounted<Reference>,
  nominalCelsius: number,
): number {
  const ua = ownUncertainties(input, a, nominalCelsius);
  const ub = ownUncertainties(input, b, nominalCelsius);
  const both = (x: number, y: number, isShared: boolean): number =>
    isShared ? (x - y) * (x - y) : x * x + y * y;
  const isOneLaboratory = a.item.calibration.issuer === b.item.calibration.issuer;
  return (
    both(ua.independent, ub.independent, false) +
    both(ua.calibration, ub.calibration, isOneLaboratory) +
    both(ua.junction, ub.junction, sharesJunction(a, b))
  );
}

/** Standard uncertainties of one reference in °C, sorted by what they share with another. */
function ownUncertainties(input: AgreementInput, mounted: Mounted<Reference>, nominalCelsius: number) {
  const { item, junction } = mounted;
  const sensitivity = sensitivityInUse(input.sensitivities, mounted, nominalCelsius);
  const table = emf(mounted.reference, nominalCelsius);
  const slope = sensitivity.ok ? sensitivity.value.microvoltPerCelsius : Number.NaN;
  const junctionSlope = sensitivity.ok ? sensitivity.value.atJunctionMicrovoltPerCelsius : Number.NaN;
  const microvolt = table.ok ? Math.abs(table.value) : Number.NaN;
  const celsius = (stated: UncertaintyInput | RepeatabilityInput, perCelsius = 1): number => {
    // What the window itself will show is not known before there is one.
    if (stated.kind === "zero" || stated.kind === "block-means") return 0;
    const uncertainty = actingAt(stated, nominalCelsius);
    if (uncertainty.kind === "zero") return 0;
    const standard = standardUncertainty(uncertainty);
    if (uncertainty.unit === "celsius") return standard * perCelsius;
    return (uncertainty.unit === "relative" ? standard * microvolt : standard) / slope;
  };
  const { uniformity, axial, radial, gradient } = input.configuration.characterisation;
  const prepared = prepareReference(mounted, input);
  const history = prepared.ok
    ? [prepared.value.drift.input, interpolationAt(item, prepared.value, nominalCelsius)]
    : [];
  const parts = [
    input.referenceRepeatability,
    ...history,
    item.inhomogeneity,
    uniformity,
    furnaceInputAt(axial, nominalCelsius),
    furnaceInputAt(radial, nominalCelsius),
    gradient,
    input.scanner.parasitic,
    input.voltmeter.resolution,
  ].map((part) => celsius(part));
  parts.push(celsius(junction.spread, junctionSlope / slope));
  return {
    independent: Math.sqrt(parts.reduce((total, u) => total + u * u, 0)),
    calibration: celsius(item.calibrationUncertainty),
    junction: celsius(junction.uncertainty, junctionSlope / slope),
  };
}
