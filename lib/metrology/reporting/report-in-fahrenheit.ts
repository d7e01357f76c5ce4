import { found, type Outcome } from "../outcome";
import { type FahrenheitQuantity, fahrenheitText } from "./fahrenheit";
import type { ReportedValue } from "./report-value";
import { roundUncertainty, type UncertaintyDigits } from "./round-uncertainty";

/** Decimals kept between conversion and rounding: more than a float64 holds, so that U is rounded once in effect. */
const FINE_DECIMALS = 20;

/**
 * A result in °C stated in °F: U is converted (a difference, 1.8·U) and rounded in its new unit, then the value is
 * converted exactly and rounded to the last digit of U. Rounding in °C first and converting then would round twice.
 * JCGM 100:2008, 7.2.6, with the exact conversion of `fahrenheitText`.
 * Symbols: `celsius` = y in °C, a temperature or a difference as `quantity` says; `expandedCelsius` = U in °C;
 * `capabilityCelsius` = CMC in °C or null. Refused: a number that is not finite, U or CMC not above 0.
 */
export function reportInFahrenheit(
  celsius: number,
  expandedCelsius: number,
  digits: UncertaintyDigits,
  quantity: FahrenheitQuantity,
  capabilityCelsius: number | null = null,
): Outcome<ReportedValue> {
  const expanded = differenceInFahrenheit(expandedCelsius);
  if (!expanded.ok) return expanded;
  const capability = capabilityCelsius === null ? found(null) : differenceInFahrenheit(capabilityCelsius);
  if (!capability.ok) return capability;
  const rounded = roundUncertainty(expanded.value, digits, capability.value);
  if (!rounded.ok) return rounded;
  const { text, decimals } = rounded.value;
  const value = fahrenheitText(celsius, decimals, quantity);
  if (!value.ok) return value;
  return found({ value: value.value, expanded: text, decimals });
}

function differenceInFahrenheit(celsius: number): Outcome<number> {
  const text = fahrenheitText(celsius, FINE_DECIMALS, "difference");
  return text.ok ? found(Number(text.value)) : text;
}
