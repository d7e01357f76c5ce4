import type { DccProblem } from "./dcc-certificate";
import { decimalNumber, halfLastDigit } from "./decimal-text";
import { siUnit } from "./si-unit";
import { childNamed, childrenNamed, everyElement, listMembers, type XmlElement } from "./xml-element";

type Cell = { readonly value: number; readonly slack: number; readonly dimension: string };
type Column = {
  readonly element: XmlElement;
  readonly values: readonly string[];
  readonly units: readonly string[];
};

const columnsOf = (holder: XmlElement): readonly Column[] => [
  ...childrenNamed(holder, "realListXMLList").map((element) => ({
    element,
    values: listMembers(childNamed(element, "valueXMLList")?.text ?? ""),
    units: listMembers(childNamed(element, "unitXMLList")?.text ?? ""),
  })),
  ...childrenNamed(holder, "real").map((element) => ({
    element,
    values: [childNamed(element, "value")?.text ?? ""],
    units: [childNamed(element, "unit")?.text ?? ""],
  })),
];

/** Degrees Celsius become kelvin, so that the two can be held side by side. */
const cellOf = (column: Column, row: number): Cell | null => {
  const written = column.values[row] ?? "";
  const parsed = siUnit(column.units[column.units.length === 1 ? 0 : row] ?? "");
  if (!parsed.ok) return null;
  const value = decimalNumber(written, parsed.unit.shift);
  if (value === null) return null;
  const slack = halfLastDigit(written, parsed.unit.shift);
  return parsed.unit.dimension === "degreecelsius^1"
    ? { value: value + 273.15, slack, dimension: "kelvin^1" }
    : { value, slack, dimension: parsed.unit.dimension };
};

/**
 * Two roundings of one value: with the same last digit they agree exactly, since 273.15 K shifts only hundredths (a
 * last digit of 0.1 or more is rounded anew); with different ones they may differ by half of each last digit.
 */
const apart = (one: Cell, other: Cell): boolean => {
  const isSameDigit = Math.abs(one.slack - other.slack) <= one.slack * 1e-9 && one.slack < 0.02;
  const slack = isSameDigit ? 0 : (one.slack + other.slack) * 1.000001;
  return Math.abs(one.value - other.value) > slack + Math.abs(one.value) * 1e-14;
};

const hybrid = (element: XmlElement): DccProblem[] => {
  const all = columnsOf(element);
  const [first, ...others] = all;
  if (!first) return [];
  if (!all.some(({ units }) => units.every((unit) => siUnit(unit).ok)))
    return [
      {
        code: "value",
        path: element.path,
        line: element.line,
        message: `None of the units of this hybrid quantity is one of the SI: ${all.map(({ units }) => units[0]).join(", ")}. Ask the issuer for the values in an SI unit.`,
      },
    ];
  return others.flatMap((column) => {
    for (let row = 0; row < first.values.length; row += 1) {
      const [one, other] = [cellOf(first, row), cellOf(column, row)];
      if (!one || !other || one.dimension !== other.dimension || !apart(one, other)) continue;
      const message = `Value ${row + 1} is ${column.values[row]} ${column.units[0]} here and ${first.values[row]} ${first.units[0]} in the first unit of the same quantity: the two are not the same. Ask the issuer which one holds.`;
      return [
        { code: "contradiction" as const, path: column.element.path, line: column.element.line, message },
      ];
    }
    return [];
  });
};

/** One list of U may be spelled in either form; the members are spread over the rows. */
const uncertaintyOf = (column: XmlElement): readonly string[] => {
  for (const element of everyElement(column))
    if (/^(?:valueExpandedMU|uncertainty)(?:XMLList)?$/.test(element.name)) return listMembers(element.text);
  return [];
};

const isWithin = (stated: string, size: number, value: number, slack: number): boolean => {
  const ratio = size / Math.abs(value);
  // A relative uncertainty is itself rounded, as are U and the value it was made from.
  return (
    Math.abs((decimalNumber(stated) ?? ratio) - ratio) <=
    halfLastDigit(stated) * 1.000001 + (slack / Math.abs(value)) * 2 + ratio * 0.05
  );
};

const relative = (quantity: XmlElement): DccProblem[] => {
  const holder = childNamed(quantity, "relativeUncertainty");
  const [column] = columnsOf(quantity);
  const stated =
    childNamed(holder, "relativeUncertaintyXmlList", "valueXMLList") ??
    childNamed(holder, "relativeUncertaintySingle", "value");
  const list = column ? uncertaintyOf(column.element) : [];
  if (!stated || !column || list.length === 0) return [];
  const ratios = listMembers(stated.text);
  const unit = listMembers(
    childNamed(
      stated.path.includes("XmlList")
        ? childNamed(holder, "relativeUncertaintyXmlList")
        : childNamed(holder, "relativeUncertaintySingle"),
      stated.path.includes("XmlList") ? "unitXMLList" : "unit",
    )?.text ?? "",
  )[0];
  if (unit !== "\\one") return [];
  for (const [row, written] of column.values.entries()) {
    const value = decimalNumber(written);
    const size = list[list.length === 1 ? 0 : row] ?? "";
    const ratio = ratios[ratios.length === 1 ? 0 : row] ?? "";
    const number = decimalNumber(size);
    if (
      value === null ||
      value === 0 ||
      number === null ||
      isWithin(ratio, number, value, halfLastDigit(size))
    )
      continue;
    return [
      {
        code: "contradiction",
        path: stated.path,
        line: stated.line,
        message: `The relative uncertainty ${ratio} of value ${row + 1} is not its U of ${size} divided by ${written}. Ask the issuer which one holds.`,
      },
    ];
  }
  return [];
};

/** What the file says twice must be the same: a temperature in kelvin and in °C, U and the relative uncertainty. */
export const checkAgreement = (root: XmlElement): readonly DccProblem[] =>
  [...everyElement(root)].flatMap((element) => {
    if (element.name === "hybrid") return hybrid(element);
    return element.name === "quantity" ? relative(element) : [];
  });
