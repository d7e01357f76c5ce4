import { celsiusInKelvin, fahrenheitInKelvin, plainNumber } from "./plain-number";
import { nameOf } from "./voice";
import { element, elementOf, type Xml } from "./xml";

export const kelvin = "\\kelvin";
export const degreeCelsius = "\\degreecelsius";
export const volt = "\\volt";
/** Outside the SI, therefore only ever beside the same values in kelvin. */
const degreeFahrenheit = "°F";

/** U as the D-SI wants it: one value, one k and one probability for each row. */
export type Expanded = {
  readonly values: readonly string[];
  readonly factors: readonly string[];
  readonly probabilities: readonly string[];
};

const list = (name: string, members: readonly string[]): Xml => element(`si:${name}`, members.join(" "));

const uncertainty = ({ values, factors, probabilities }: Expanded): Xml =>
  element("si:measurementUncertaintyUnivariateXMLList", [
    element("si:expandedMUXMLList", [
      list("valueExpandedMUXMLList", values),
      list("coverageFactorXMLList", factors),
      list("coverageProbabilityXMLList", probabilities),
    ]),
  ]);

/** One column of numbers. `labels` are words without blanks. */
export const column = (
  values: readonly string[],
  unit: string,
  {
    expanded = null,
    labels = null,
  }: { readonly expanded?: Expanded | null; readonly labels?: readonly string[] | null } = {},
): Xml =>
  element("si:realListXMLList", [
    labels ? list("labelXMLList", labels) : null,
    list("valueXMLList", values),
    list("unitXMLList", [unit]),
    expanded ? uncertainty(expanded) : null,
  ]);

export const single = (value: string, unit: string): Xml =>
  element("si:real", [element("si:value", value), element("si:unit", unit)]);

export const quantity = (
  refType: string,
  name: readonly Xml[],
  inside: Xml,
  {
    description = null,
    metaData = [],
  }: { readonly description?: Xml | null; readonly metaData?: readonly (Xml | null)[] } = {},
): Xml =>
  element(
    "dcc:quantity",
    [nameOf(name), description, inside, elementOf("dcc:measurementMetaData", metaData)],
    { refType },
  );

/** Words, one for each row. */
export const wordColumn = (refType: string, name: readonly Xml[], rows: readonly string[]): Xml =>
  quantity(refType, name, element("dcc:charsXMLList", rows.join(" ")));

/** Temperatures on the ITS-90, the same values in kelvin and in °C. */
export const temperatures = (celsius: readonly string[], labels: readonly string[] | null = null): Xml => {
  const plain = celsius.map(plainNumber);
  return element("si:hybrid", [
    column(plain.map(celsiusInKelvin), kelvin, { labels }),
    column(plain, degreeCelsius),
  ]);
};

export const oneTemperature = (celsius: string): Xml => {
  const plain = plainNumber(celsius);
  return element("si:hybrid", [single(celsiusInKelvin(plain), kelvin), single(plain, degreeCelsius)]);
};

/** A label has no blanks: the blank before the unit becomes a low line. */
export const label = (setpoint: string): string => setpoint.trim().replace(/\s+/g, "_");

const ordered = /^([\u2212-]?[\d\u202f.,]+) °([CF])$/;

/** Temperatures as somebody wrote them, "600 °F": in kelvin, and in their own unit where they share one. */
export const writtenTemperatures = (written: readonly string[]): Xml => {
  const read = written.map((text) => ordered.exec(text.trim()));
  if (read.some((match) => match === null)) return element("dcc:charsXMLList", written.map(label).join(" "));
  const values = read.map((match) => plainNumber(match?.[1] ?? ""));
  const units = read.map((match) => match?.[2] ?? "");
  const inKelvin = values.map((value, at) =>
    units[at] === "F" ? fahrenheitInKelvin(value) : celsiusInKelvin(value),
  );
  const isShared = units.every((unit) => unit === units[0]);
  return element("si:hybrid", [
    column(inKelvin, kelvin, { labels: written.map(label) }),
    isShared ? column(values, units[0] === "F" ? degreeFahrenheit : degreeCelsius) : null,
  ]);
};
