import { type Outcome, refused } from "@/lib/metrology/outcome";
import { platinumTemperature } from "@/lib/metrology/platinum/platinum-temperature";
import { sprtCalibration } from "@/lib/metrology/platinum/sprt-calibration";
import { sprtTemperature } from "@/lib/metrology/platinum/sprt-temperature";
import type { FindingsOf } from "./findings";

const celsiusOf = ({ curve }: FindingsOf<"thermometer">, ohm: number): Outcome<number> => {
  if (curve.form === "callendar-van-dusen") return platinumTemperature(curve, ohm);
  const calibration = sprtCalibration(curve.section, curve.ratios);
  return calibration.ok ? sprtTemperature(calibration.value, ohm / curve.waterOhm) : calibration;
};

/** t in °C from a resistance, by the certificate's function and within its range only. */
export const thermometerTemperature = (findings: FindingsOf<"thermometer">, ohm: number): Outcome<number> => {
  const celsius = celsiusOf(findings, ohm);
  if (!celsius.ok) return celsius;
  const { fromCelsius, toCelsius } = findings;
  return celsius.value < fromCelsius || celsius.value > toCelsius
    ? refused(
        "outside-range",
        `${ohm} Ω is ${celsius.value.toFixed(3)} °C; the certificate holds from ${fromCelsius} to ${toCelsius} °C`,
      )
    : celsius;
};
