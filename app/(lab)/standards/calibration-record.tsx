import { DataTable } from "@/app/_ui/data-table";
import { Disclosure } from "@/app/_ui/disclosure";
import { FieldList } from "@/app/_ui/field-list";
import { routeLabels } from "@/lib/domain/calibration/labels";
import type { Calibration } from "@/lib/domain/calibration/types";

type Props = { readonly calibration: Calibration; readonly inForce: boolean };

/** A minus as printed, not a hyphen. */
const signed = (value: number): string => String(value).replace("-", "−");

const uncertaintyOf = ({ findings }: Calibration): string => {
  switch (findings.kind) {
    case "reference":
      return `U = ${findings.expanded} ${findings.unit === "celsius" ? "°C" : "µV"}, k = ${findings.coverageFactor}`;
    case "voltmeter":
      return `U = ${findings.expandedMicrovolt} µV, k = ${findings.coverageFactor}`;
    case "scanner":
      return `parasitic emf within ± ${findings.parasiticHalfWidthMicrovolt} µV`;
    case "junction":
      return `${findings.celsius} °C, U = ${findings.expandedCelsius} °C, k = ${findings.coverageFactor}`;
  }
};

export function CalibrationRecord({ calibration, inForce }: Props) {
  const { certificate, issuer, performedOn, dueOn } = calibration;
  return (
    <Disclosure
      open={inForce}
      summary={`${certificate}, ${issuer}, ${performedOn}${inForce ? ", in force" : ""}`}
    >
      <FieldList
        items={[
          { label: "Issued by", value: issuer },
          { label: "Accreditation", value: calibration.accreditation },
          { label: "How it reaches the SI", value: routeLabels[calibration.route] },
          { label: "Performed", value: performedOn },
          { label: "Due again", value: dueOn },
          { label: "Finding", value: uncertaintyOf(calibration) },
          { label: "Note", value: calibration.findings.note },
        ]}
      />
      <Points calibration={calibration} />
    </Disclosure>
  );
}

const equationText = { polynomial: "Deviation from the reference function", coefficients: "emf" } as const;

function Points({ calibration: { certificate, findings } }: { readonly calibration: Calibration }) {
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
