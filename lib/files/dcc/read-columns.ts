import type { DccColumn, DccUncertainty } from "@/lib/domain/calibration/dcc-certificate";
import { decimalNumber } from "./decimal-text";
import { childNamed, childrenNamed, listMembers, placeOf, type XmlElement } from "./xml-element";

/** One stands for all. */
const spread = (members: readonly string[], rows: number): readonly string[] =>
  members.length === 1 ? Array.from({ length: rows }, () => members[0] ?? "") : members;

const numbers = (written: readonly string[]): readonly (number | null)[] =>
  written.map((member) => decimalNumber(member));

/** The same element under the names of its forms: single, in a list, old and new. */
const first = (element: XmlElement | null, ...names: readonly string[]): XmlElement | null => {
  for (const name of names) {
    const found = childNamed(element, name) ?? childNamed(element, `${name}XMLList`);
    if (found) return found;
  }
  return null;
};

const uncertaintyFrom = (form: XmlElement, rows: number): DccUncertainty => {
  const list = (...names: readonly string[]) => spread(listMembers(first(form, ...names)?.text ?? ""), rows);
  const written = list("valueExpandedMU", "uncertainty", "valueStandardMU", "standardUnc");
  const common = {
    numbers: numbers(written),
    written,
    distribution: list("distribution"),
    place: placeOf(form),
  };
  const coverageProbability = numbers(list("coverageProbability"));
  if (first(form, "valueExpandedMU", "uncertainty"))
    return {
      kind: "expanded",
      ...common,
      coverageFactor: numbers(list("coverageFactor")),
      coverageProbability,
    };
  if (first(form, "intervalMin"))
    return {
      kind: "interval",
      ...common,
      from: numbers(list("intervalMin")),
      to: numbers(list("intervalMax")),
      coverageProbability,
    };
  return { kind: "standard", ...common };
};

const forms = ["expandedMU", "standardMU", "coverageIntervalMU", "expandedUnc", "coverageInterval"];
const wrappers = [
  "measurementUncertaintyUnivariate",
  "measurementUncertaintyUnivaraite",
  "listMeasurementUncertaintyUnivariate",
  "listUnivariateUnc",
];

/** Old form and new: directly in the quantity, or one element deeper. */
const uncertaintyOf = (holder: XmlElement, rows: number): DccUncertainty | null => {
  const form = first(first(holder, ...wrappers), ...forms) ?? first(holder, ...forms);
  if (form) return uncertaintyFrom(form, rows);
  // si:constant carries its uncertainty bare.
  const bare =
    holder.name === "constant"
      ? (childNamed(holder, "valueStandardMU") ?? childNamed(holder, "uncertainty"))
      : null;
  return (
    bare && {
      kind: "standard",
      numbers: [decimalNumber(bare.text)],
      written: [bare.text],
      distribution: listMembers(childNamed(holder, "distribution")?.text ?? ""),
      place: placeOf(bare),
    }
  );
};

const singleColumn = (element: XmlElement): DccColumn => {
  const written = [childNamed(element, "value")?.text ?? ""];
  return {
    units: [childNamed(element, "unit")?.text ?? ""],
    written,
    numbers: numbers(written),
    labels: childrenNamed(element, "label").map(({ text }) => text),
    dateTimes: childrenNamed(element, "dateTime").map(({ text }) => text),
    uncertainty: uncertaintyOf(element, 1),
    place: placeOf(element),
  };
};

const listColumn = (element: XmlElement): DccColumn => {
  const written = listMembers(childNamed(element, "valueXMLList")?.text ?? "");
  const list = (name: string) => spread(listMembers(childNamed(element, name)?.text ?? ""), written.length);
  return {
    units: list("unitXMLList"),
    written,
    numbers: numbers(written),
    labels: list("labelXMLList"),
    dateTimes: list("dateTimeXMLList"),
    uncertainty: uncertaintyOf(element, written.length),
    place: placeOf(element),
  };
};

/** Uncertainties of the values one by one, joined to a column when all are of one kind. */
const joinedUncertainty = (cells: readonly DccColumn[]): DccUncertainty | null => {
  const all = cells.map(({ uncertainty }) => uncertainty).filter((uncertainty) => uncertainty !== null);
  const [head] = all;
  if (!head || all.length !== cells.length || all.some(({ kind }) => kind !== head.kind)) return null;
  const join = <K extends string>(key: K) =>
    all.flatMap((uncertainty) => (uncertainty as unknown as Record<K, readonly never[]>)[key]);
  const common = {
    numbers: join("numbers"),
    written: join("written"),
    distribution: join("distribution"),
    place: head.place,
  };
  if (head.kind === "expanded")
    return {
      kind: "expanded",
      ...common,
      coverageFactor: join("coverageFactor"),
      coverageProbability: join("coverageProbability"),
    };
  if (head.kind === "interval")
    return {
      kind: "interval",
      ...common,
      from: join("from"),
      to: join("to"),
      coverageProbability: join("coverageProbability"),
    };
  return { kind: "standard", ...common };
};

/** si:realList, or si:list of D-SI 1.3: the older list of single values, with what is said for all of them at its head. */
const realListColumn = (element: XmlElement): DccColumn => {
  const cells = childrenNamed(element, "real").map(singleColumn);
  const common = childNamed(element, "listUnit")?.text ?? "";
  return {
    units: cells.map(({ units }) => (units[0] === "" || units[0] === undefined ? common : units[0])),
    written: cells.flatMap(({ written }) => written),
    numbers: cells.flatMap((cell) => cell.numbers),
    labels: cells.flatMap(({ labels }) => labels),
    dateTimes: cells.flatMap(({ dateTimes }) => dateTimes),
    uncertainty: joinedUncertainty(cells) ?? uncertaintyOf(element, cells.length),
    place: placeOf(element),
  };
};

const readers: Readonly<Record<string, (element: XmlElement) => readonly DccColumn[]>> = {
  real: (element) => [singleColumn(element)],
  constant: (element) => [singleColumn(element)],
  realListXMLList: (element) => [listColumn(element)],
  relativeUncertaintyXmlList: (element) => [listColumn(element)],
  relativeUncertaintySingle: (element) => [singleColumn(element)],
  realList: (element) => [realListColumn(element)],
  list: (element) => (childNamed(element, "real") ? [realListColumn(element)] : columnsOf(element)),
  hybrid: (element) => columnsOf(element),
};

/** The columns of numbers below a quantity, hybrid or list, in the order of the file. Complex values are set aside. */
export const columnsOf = (holder: XmlElement): readonly DccColumn[] =>
  holder.children.flatMap((child) => readers[child.name]?.(child) ?? []);
