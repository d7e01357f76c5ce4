import type { CertificateRow } from "../certificate/content";
import { scopeWords } from "./scope-words";
import { type SpeakingContent, setsOf } from "./sets-of";

export const resultColumns = [
  "certificate",
  "issued_on",
  "measured_on",
  "order",
  "purchase_order",
  "sensor_serial",
  "sensor_tag",
  "type",
  "set",
  "setpoint",
  "unit",
  "state",
  "error",
  "expanded_uncertainty",
  "error_celsius",
  "expanded_uncertainty_celsius",
  "deviation_microvolt",
  "expanded_uncertainty_microvolt",
  "coverage_factor",
  "conformity",
  "remark",
  "accredited_scope",
] as const;

const isFahrenheit = (row: CertificateRow): boolean => row.setpoint.trim().endsWith("°F");

/**
 * A difference of temperatures in °C, as printed, in °F: times 1.8, with one more decimal, so that nothing is rounded.
 * The certificate states it in °C; both stand in the table.
 */
export const fahrenheitDifference = (printed: string): string => {
  const plain = printed.replaceAll("\u2212", "-").trim();
  if (!/^[+-]?\d+(\.\d+)?$/.test(plain)) return "";
  const [whole = "", decimals = ""] = plain.replace(/^[+-]/, "").split(".");
  // Whole numbers: 1.3 × 1.8 is 13 × 18 hundredths.
  const digits = String(BigInt(whole + decimals) * 18n).padStart(decimals.length + 2, "0");
  const at = digits.length - decimals.length - 1;
  return `${plain.startsWith("-") ? "-" : ""}${digits.slice(0, at)}.${digits.slice(at)}`;
};

const inUnit = (row: CertificateRow, celsius: string): string =>
  isFahrenheit(row) ? fahrenheitDifference(celsius) : celsius;

/** One row a result, in the customer's unit, with the certificate's own figures beside it. */
export const resultRows = (content: SpeakingContent): readonly (readonly string[])[] =>
  setsOf(content).flatMap(({ certificate, item, performedTo, set, rows }) =>
    rows.map((row) => [
      certificate,
      content.issuedOn,
      performedTo,
      content.order.number,
      content.order.purchaseOrder,
      item.serial,
      item.tag,
      item.typeLetter,
      set,
      row.setpoint.replace(/\s*°[CF]\s*$/, ""),
      isFahrenheit(row) ? "°F" : "°C",
      row.state,
      inUnit(row, row.errorCelsius),
      inUnit(row, row.expandedCelsius),
      row.errorCelsius,
      row.expandedCelsius,
      row.deviationMicrovolt,
      row.expandedMicrovolt,
      row.coverageFactor,
      row.conformity.state,
      row.remark,
      scopeWords(row.scope),
    ]),
  );
