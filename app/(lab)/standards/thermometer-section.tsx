import { Button } from "@/app/_ui/button";
import { Section } from "@/app/_ui/section";
import { thermometerTemperature } from "@/lib/domain/calibration/thermometer-temperature";
import type { CalibrationRecord } from "@/lib/domain/calibration/types";
import { parseDecimal } from "@/lib/web/form-fields";

type Props = {
  readonly calibration: CalibrationRecord | null;
  /** The resistance of the address. */
  readonly ohm: string | readonly string[] | undefined;
};

const answerOf = (findings: CalibrationRecord["findings"], ohm: string): string => {
  if (findings.kind !== "thermometer") return "";
  const celsius = thermometerTemperature(findings, parseDecimal(ohm));
  return celsius.ok
    ? `${ohm} Ω is ${celsius.value.toFixed(4).replace("-", "−")} °C (ITS-90).`
    : `No temperature: ${celsius.problem.message}.`;
};

/** Its certificate in force, used: a resistance in, a temperature out. */
export function ThermometerSection({ calibration, ohm }: Props) {
  if (!calibration) return null;
  const asked = typeof ohm === "string" ? ohm : "";
  return (
    <Section
      title="Resistance to temperature"
      note={`By certificate ${calibration.certificate}, within its range only.`}
    >
      <form className="row" method="get" aria-label="Resistance to temperature">
        <label htmlFor="ohm">Resistance, Ω</label>
        <input
          id="ohm"
          name="ohm"
          className="input input-number"
          inputMode="decimal"
          defaultValue={asked}
          required
        />
        <Button kind="quiet" type="submit">
          Convert
        </Button>
      </form>
      {asked === "" ? null : <p role="status">{answerOf(calibration.findings, asked)}</p>}
    </Section>
  );
}
