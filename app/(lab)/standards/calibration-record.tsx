import { DataTable } from "@/app/_ui/data-table";
import { routeLabels } from "@/lib/domain/calibration/labels";
import { thermometerWords } from "@/lib/domain/calibration/thermometer-words";
import type { Calibration, CalibrationRecord } from "@/lib/domain/calibration/types";

/** A minus as printed, not a hyphen. */
const signed = (value: number): string => String(value).replace("-", "−");

export const uncertaintyOf = ({ findings }: Calibration): string => {
  switch (findings.kind) {
    case "reference":
      return `U = ${findings.expanded} ${findings.unit === "celsius" ? "°C" : "µV"}, k = ${findings.coverageFactor}`;
    case "voltmeter":
      return `U = ${findings.expandedMicrovolt} µV, k = ${findings.coverageFactor}`;
    case "scanner":
      return `parasitic emf within ± ${findings.parasiticHalfWidthMicrovolt} µV`;
    case "thermometer":
      return `${thermometerWords(findings)}, U = ${findings.expandedCelsius} °C, k = ${findings.coverageFactor}`;
    case "lead":
      return `${signed(findings.correctionMicrovolt)} µV from ${signed(findings.fromCelsius)} to ${signed(findings.toCelsius)} °C, U = ${findings.expandedMicrovolt} µV, k = ${findings.coverageFactor}`;
    case "ambient":
      return `${signed(findings.correctionCelsius)} °C, U = ${findings.expandedCelsius} °C, k = ${findings.coverageFactor}${
        findings.humidity
          ? `; ${signed(findings.humidity.correctionPercent)} % relative humidity, U = ${findings.humidity.expandedPercent} %`
          : ""
      }`;
    case "junction":
      return `${findings.celsius} °C, U = ${findings.expandedCelsius} °C, k = ${findings.coverageFactor}`;
  }
};

const sourceLabels = {
  typed: "Typed from the certificate",
  dcc: "Read from a digital certificate, confirmed by a person",
  "in-house": "Our own certificate, taken over without typing",
} as const;

const rangeOf = ({ fromCelsius, toCelsius }: CalibrationRecord): string =>
  fromCelsius === null || toCelsius === null ? "" : `${signed(fromCelsius)} to ${signed(toCelsius)} °C`;

/** What a certificate says, for the head of its page. */
export const certificateItems = (calibration: CalibrationRecord) => [
  { label: "Issued by", value: calibration.issuer },
  { label: "Accreditation", value: calibration.accreditation },
  { label: "How it reaches the SI", value: routeLabels[calibration.route] },
  ...(calibration.justification ? [{ label: "Why by this route", value: calibration.justification }] : []),
  { label: "Serial number on it", value: calibration.itemSerial },
  { label: "Performed", value: calibration.performedOn },
  { label: "Due again", value: calibration.dueOn },
  { label: "Finding", value: uncertaintyOf(calibration) },
  { label: "Calibrated range", value: rangeOf(calibration) },
  { label: "Scale", value: calibration.scale },
  { label: "Conditions", value: calibration.conditions },
  { label: "Statement of traceability", value: calibration.traceabilityStatement },
  { label: "Note", value: calibration.findings.note },
  { label: "How it came in", value: sourceLabels[calibration.source] },
];

const equationText = { polynomial: "Deviation from the reference function", coefficients: "emf" } as const;

export function CalibrationFindings({
  calibration: { certificate, findings },
}: {
  readonly calibration: Calibration;
}) {
  if (findings.kind === "reference" && findings.equation)
    return (
      <DataTable
        caption={`${equationText[findings.equation.kind]}, Σ c·tⁱ in µV with t in °C, from ${signed(findings.equation.fromCelsius)} to ${signed(findings.equation.toCelsius)} °C, certificate ${certificate}`}
        columns={[
          { key: "power", header: "Power i", align: "number" },
          { key: "coefficient", header: "Coefficient", align: "number" },
        ]}
        rows={findings.equation.terms.map(({ coefficient }, power) => ({
          key: String(power),
          cells: { power, coefficient: signed(coefficient) },
        }))}
      />
    );
  if (findings.kind === "reference")
    return (
      <DataTable
        caption={`Deviations from the reference function, certificate ${certificate}`}
        columns={[
          { key: "celsius", header: "Temperature", unit: "°C", align: "number" },
          { key: "deviation", header: "Deviation", unit: "µV", align: "number" },
        ]}
        rows={findings.points.map((point) => ({
          key: String(point.celsius),
          cells: { celsius: signed(point.celsius), deviation: signed(point.deviationMicrovolt) },
        }))}
      />
    );
  if (findings.kind === "voltmeter" && findings.corrections.length > 0)
    return (
      <DataTable
        caption={`Corrections to the indication, certificate ${certificate}`}
        columns={[
          { key: "microvolt", header: "Indication", unit: "µV", align: "number" },
          { key: "correction", header: "Correction", unit: "µV", align: "number" },
        ]}
        rows={findings.corrections.map((point) => ({
          key: String(point.microvolt),
          cells: { microvolt: signed(point.microvolt), correction: signed(point.correctionMicrovolt) },
        }))}
      />
    );
  return null;
}
