import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { reportValue } from "@/lib/metrology/reporting/report-value";
import { typeset } from "@/lib/metrology/reporting/typeset";
import { truncatedDegreesOfFreedom } from "@/lib/metrology/uncertainty/coverage-factor";
import type { MeasuredPoint } from "./evaluation";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import { reportedCelsius } from "./point-scope";

type Printed = MeasuredPoint["printed"];

/** The reference temperature shows at least tenths: it is not a result, and a whole degree would hide it. */
const LEAST_TEMPERATURE_DECIMALS = 1;
const COVERAGE_FACTOR_DECIMALS = 2;

/** The numbers as a document shows them, rounded once, each value together with its U. */
export function printPoint(point: Omit<MeasuredPoint, "printed">, digits: 1 | 2): EvidenceOutcome<Printed> {
  const expandedCelsius = reportedCelsius(point.scope, point.expandedCelsius);
  const expandedMicrovolt = point.scope.isRaised
    ? expandedCelsius * point.seebeckMicrovoltPerCelsius
    : point.expandedMicrovolt;
  // Rounded, U must not slip below the capability either.
  const { capabilityCelsius } = point.scope;
  const capabilityMicrovolt =
    capabilityCelsius === null ? null : capabilityCelsius * point.seebeckMicrovoltPerCelsius;
  const emf = reportValue(point.emfAtNominalMicrovolt, expandedMicrovolt, digits, capabilityMicrovolt);
  if (!emf.ok) return missing("rounding", emf.problem.message);
  const error = reportValue(point.errorCelsius, expandedCelsius, digits, capabilityCelsius);
  if (!error.ok) return missing("rounding", error.problem.message);
  const print = (value: number, decimals: number): string => typeset(roundHalfEven(value, decimals));
  const { decimals } = error.value;
  return got({
    // As ordered but for the endless decimals of a setpoint in °F: 600 °F is 315.556 °C.
    nominalCelsius: typeset(`${Number(roundHalfEven(point.nominalCelsius, 3))}`),
    referenceCelsius: print(point.referenceCelsius, Math.max(decimals, LEAST_TEMPERATURE_DECIMALS)),
    emfMicrovolt: typeset(emf.value.value),
    deviationMicrovolt: print(point.deviationMicrovolt, emf.value.decimals),
    expandedMicrovolt: typeset(emf.value.expanded),
    errorCelsius: typeset(error.value.value),
    correctionCelsius: print(-point.errorCelsius, decimals),
    expandedCelsius: typeset(error.value.expanded),
    coverageFactor: print(point.coverageFactor, COVERAGE_FACTOR_DECIMALS),
    degreesOfFreedom:
      point.degreesOfFreedom === null ? "∞" : typeset(`${truncatedDegreesOfFreedom(point.degreesOfFreedom)}`),
  });
}
