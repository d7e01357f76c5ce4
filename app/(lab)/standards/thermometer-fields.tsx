import { Disclosure } from "@/app/_ui/disclosure";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { fixedPoints, sprtSections } from "@/lib/domain/calibration/thermometer-findings";

/** A platinum thermometer's certificate: the coefficients of IEC 60751, or ratios at fixed points after the ITS-90. */
export function ThermometerFields() {
  return (
    <>
      <SelectField
        name="findings.curve.form"
        label="What the certificate prints"
        prompt="Choose its function"
        choices={[
          { value: "callendar-van-dusen", label: "R at 0 °C, A, B and C (IEC 60751)" },
          { value: "sprt", label: "W at fixed points (ITS-90)" },
        ]}
      />
      <Disclosure summary="R at 0 °C, A, B and C" open>
        <NumberField name="findings.curve.zeroOhm" label="R at 0 °C" unit="Ω" optional />
        <NumberField name="findings.curve.a" label="A" unit="°C⁻¹" hint="About 3.9083e-3." optional />
        <NumberField name="findings.curve.b" label="B" unit="°C⁻²" hint="About -5.775e-7." optional />
        <NumberField name="findings.curve.c" label="C" unit="°C⁻⁴" hint="Below 0 °C only." optional />
      </Disclosure>
      <Disclosure summary="W at fixed points">
        <SelectField
          name="findings.curve.section"
          label="Subrange, by its section of the ITS-90"
          prompt="Choose the subrange"
          optional
          choices={sprtSections.map((section) => ({ value: section, label: section }))}
        />
        <NumberField
          name="findings.curve.waterOhm"
          label="R at the triple point of water"
          unit="Ω"
          optional
        />
        {fixedPoints.map((point) => (
          <NumberField key={point} name={`findings.curve.ratios.${point}`} label={`W at ${point}`} optional />
        ))}
      </Disclosure>
      <NumberField name="findings.fromCelsius" label="Holds from" unit="°C" />
      <NumberField name="findings.toCelsius" label="Holds up to" unit="°C" />
      <NumberField
        name="findings.expandedCelsius"
        label="Expanded uncertainty U, largest over the range"
        unit="°C"
      />
      <NumberField name="findings.coverageFactor" label="Coverage factor k" defaultValue={2} />
    </>
  );
}
