import type { DccProblem } from "./dcc-certificate";
import { childNamed, childrenNamed, everyElement, type XmlElement } from "./xml-element";

const problem = (element: XmlElement, code: DccProblem["code"], message: string): DccProblem => ({
  code,
  path: element.path,
  line: element.line,
  message,
});

const day = (element: XmlElement | null): string => (element?.text ?? "").trim().slice(0, 10);

/** ISO dates compare as text. */
const order = (core: XmlElement, earlier: string, later: string): DccProblem[] => {
  const [first, second] = [childNamed(core, earlier), childNamed(core, later)];
  if (!first || !second || day(first) <= day(second)) return [];
  return [
    problem(
      second,
      "contradiction",
      `${later} ${day(second)} lies before ${earlier} ${day(first)}. Ask the issuer for the right dates.`,
    ),
  ];
};

/** Each text is given in every language the certificate says it uses, once; a text without language speaks for all. */
const languages = (root: XmlElement, declared: readonly string[]): DccProblem[] => {
  const found: DccProblem[] = [];
  for (const element of everyElement(root)) {
    const contents = childrenNamed(element, "content");
    const used = contents
      .map((content) => content.attributes.get("lang"))
      .filter((lang) => lang !== undefined);
    for (const content of contents) {
      const lang = content.attributes.get("lang");
      if (lang !== undefined && !declared.includes(lang))
        found.push(
          problem(
            content,
            "contradiction",
            `The language "${lang}" is not among usedLangCodeISO639_1 (${declared.join(", ")}). Ask the issuer to declare it.`,
          ),
        );
    }
    if (used.length === 0) continue;
    const missing = used.length === contents.length ? declared.filter((lang) => !used.includes(lang)) : [];
    if (missing.length > 0)
      found.push(
        problem(
          element,
          "structure",
          `The text is missing in ${missing.join(", ")}, though the certificate says that it is written in ${declared.join(", ")}. Ask the issuer for the missing words.`,
        ),
      );
    const twice = used.find((lang, index) => used.indexOf(lang) !== index);
    if (
      twice !== undefined &&
      element.name !== "declaration" &&
      element.name !== "description" &&
      element.name !== "text"
    )
      found.push(
        problem(
          element,
          "contradiction",
          `The text stands twice in "${twice}". Ask the issuer which one holds.`,
        ),
      );
  }
  return found;
};

const ids = (root: XmlElement): DccProblem[] => {
  const met = new Map<string, XmlElement>();
  const found: DccProblem[] = [];
  for (const element of everyElement(root)) {
    const id = element.attributes.get("id");
    if (id === undefined) continue;
    const before = met.get(id);
    if (before)
      found.push(
        problem(
          element,
          "reference",
          `The id "${id}" was given to ${before.path} already. Ask the issuer which one is meant.`,
        ),
      );
    else if (!/^[\p{L}_][\p{L}\p{N}_.-]*$/u.test(id))
      found.push(problem(element, "value", `"${id}" is no id: it begins with a letter and has no blanks.`));
    else met.set(id, element);
  }
  for (const element of everyElement(root))
    for (const target of (element.attributes.get("refId") ?? "").split(/\s+/))
      if (target !== "" && !met.has(target))
        found.push(
          problem(
            element,
            "reference",
            `refId "${target}" leads to no element of the certificate. Ask the issuer what it refers to.`,
          ),
        );
  return found;
};

/** A language is declared once in its list. */
const declaredTwice = (core: XmlElement): DccProblem[] =>
  ["usedLangCodeISO639_1", "mandatoryLangCodeISO639_1"].flatMap((name) => {
    const declared = childrenNamed(core, name);
    return declared
      .filter(({ text }, index) => declared.findIndex((other) => other.text === text) < index)
      .map((element) =>
        problem(
          element,
          "structure",
          `The language "${element.text.trim()}" is declared twice. Ask the issuer which other one was meant.`,
        ),
      );
  });

/** A unit outside the SI is worth nothing without its definition, and the other way round. */
const foreignUnits = (root: XmlElement): DccProblem[] =>
  [...everyElement(root)].flatMap((element) => {
    const [unit, definition] = [childNamed(element, "nonSIUnit"), childNamed(element, "nonSIDefinition")];
    if ((unit === null) === (definition === null)) return [];
    return [
      problem(
        unit ?? definition ?? element,
        "structure",
        unit
          ? "A nonSIUnit stands here without its nonSIDefinition. Ask the issuer how the unit is defined."
          : "A nonSIDefinition stands here without the nonSIUnit it defines.",
      ),
    ];
  });

/** Dates in order, languages as declared, references that lead somewhere, foreign units with their definition. */
export const checkCore = (root: XmlElement): readonly DccProblem[] => {
  const core = childNamed(root, "administrativeData", "coreData");
  if (!core) return [];
  const declared = ["usedLangCodeISO639_1", "mandatoryLangCodeISO639_1"].flatMap((name) =>
    childrenNamed(core, name).map(({ text }) => text.trim()),
  );
  return [
    ...order(core, "beginPerformanceDate", "endPerformanceDate"),
    ...order(core, "receiptDate", "endPerformanceDate"),
    ...order(core, "endPerformanceDate", "issueDate"),
    // A rule of 3.3; certificates of the years before, published examples among them, do not keep it.
    ...(root.attributes.get("schemaVersion") === "3.3.0"
      ? [...declaredTwice(core), ...languages(root, [...new Set(declared)])]
      : []),
    ...ids(root),
    ...foreignUnits(root),
  ];
};
