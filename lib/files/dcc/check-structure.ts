import type { DccProblem } from "./dcc-certificate";
import { dccChoices, dccModel } from "./dcc-model";
import { siChoices, siModel } from "./si-model";
import { isFreeBefore32, valueProblem } from "./value-kinds";
import { childrenNamed, dccNamespace, signatureNamespace, siNamespace, type XmlElement } from "./xml-element";

type Part = {
  readonly name: string;
  readonly namespace: string;
  readonly type: string;
  readonly least: number;
  readonly most: number;
};

const namespaces: Readonly<Record<string, string>> = { si: siNamespace, ds: signatureNamespace };

const parsePart = (text: string, own: string): Part => {
  const match = /^(?:(si|ds)\.)?([^:]+):([^?*+]+)([?*+]?)$/.exec(text);
  if (!match) throw new Error(`The model has a line that is not in its notation: ${text}`);
  const [, prefix, name = "", type = "", often = ""] = match;
  return {
    name,
    type,
    namespace: prefix === undefined ? own : (namespaces[prefix] ?? own),
    least: often === "" || often === "+" ? 1 : 0,
    most: often === "" || often === "?" ? 1 : Number.POSITIVE_INFINITY,
  };
};

const models = new Map<string, readonly Part[]>(
  [...Object.entries(dccModel), ...Object.entries(siModel)].map(([type, line]) => [
    type,
    line.split(" ").map((part) => parsePart(part, type.startsWith("si.") ? siNamespace : dccNamespace)),
  ]),
);
const choices = { ...dccChoices, ...siChoices };

const attributes: ReadonlySet<string> = new Set(["id", "refId", "refType", "lang"]);

const problem = (element: XmlElement, code: DccProblem["code"], message: string): DccProblem => ({
  code,
  path: element.path,
  line: element.line,
  message,
});

const unknownAttributes = (element: XmlElement, isRoot: boolean): DccProblem[] =>
  [...element.attributes.keys()]
    .filter((name) => !attributes.has(name) && !(isRoot && name === "schemaVersion"))
    .map((name) =>
      problem(
        element,
        "structure",
        `The attribute ${name} is not known in a DCC. Ask the issuer what it means; it cannot be read.`,
      ),
    );

const counts = (element: XmlElement, parts: readonly Part[]): DccProblem[] =>
  parts.flatMap((part) => {
    const found = element.children.filter(
      (child) => child.name === part.name && child.namespace === part.namespace,
    );
    if (found.length < part.least)
      return [
        problem(
          element,
          "structure",
          `The element ${part.name} is missing in ${element.name}. Ask the issuer to add it.`,
        ),
      ];
    if (found.length <= part.most) return [];
    return [
      problem(
        found[part.most] ?? element,
        "structure",
        `The element ${part.name} stands here ${found.length} times, and may stand only once. Ask the issuer which one holds.`,
      ),
    ];
  });

const chosen = (element: XmlElement, type: string): DccProblem[] =>
  (choices[type] ?? []).flatMap(({ atLeast, atMost, of }) => {
    const found = of.flatMap((name) => childrenNamed(element, name));
    const list = of.length > 3 ? `${of.slice(0, 3).join(", ")} …` : of.join(", ");
    if (found.length < atLeast)
      return [
        problem(
          element,
          "structure",
          `${element.name} holds none of ${list}. Ask the issuer to add what it should say.`,
        ),
      ];
    if (found.length > atMost)
      return [
        problem(
          found[1] ?? element,
          "structure",
          `${element.name} holds ${found.map(({ name }) => name).join(" and ")}, and may hold only one of them. Ask the issuer which one holds.`,
        ),
      ];
    return [];
  });

/** A hybrid gives the same values in other units, of which only one must be of the SI (D-SI): °F is no slip, \\kelvn is. */
const isOtherUnit = (element: XmlElement, kind: string): boolean =>
  /^units?$/.test(kind) &&
  element.path.includes("/hybrid/") &&
  /\S/.test(element.text) &&
  !element.text.includes("\\");

const value = (element: XmlElement, kind: string, isFree: boolean): DccProblem[] => {
  if (element.children.length > 0)
    return [
      problem(
        element,
        "structure",
        `${element.name} holds ${element.children[0]?.name ?? ""} where only a value belongs. Ask the issuer for a corrected file.`,
      ),
    ];
  if (isOtherUnit(element, kind) || (isFree && isFreeBefore32(kind, element.text))) return [];
  const message = valueProblem(kind, element.text);
  return message === null ? [] : [problem(element, "value", message)];
};

const walk = (element: XmlElement, type: string, isFree: boolean, isRoot = false): DccProblem[] => {
  const parts = models.get(type);
  if (type === "anything") return [];
  const found = unknownAttributes(element, isRoot);
  if (!parts) return [...found, ...value(element, type, isFree)];
  if (/\S/.test(element.text))
    found.push(
      problem(
        element,
        "structure",
        `"${element.text.trim().slice(0, 60)}" stands in ${element.name} beside its elements, where no text belongs.`,
      ),
    );
  for (const child of element.children) {
    const part = parts.find(({ name, namespace }) => name === child.name && namespace === child.namespace);
    if (part) found.push(...walk(child, part.type, isFree));
    else
      found.push(
        problem(
          child,
          "structure",
          `${child.name} is not known in ${element.name}${child.namespace === dccNamespace || child.namespace === siNamespace ? "" : ` (namespace "${child.namespace.slice(0, 80)}")`}. Ask the issuer for a file as its DCC version describes it.`,
        ),
      );
  }
  return [...found, ...counts(element, parts), ...chosen(element, type)];
};

/** Nothing is missing, nothing unknown is skipped, and each value is of its kind: the part of the schema we hold ourselves. */
export const checkStructure = (root: XmlElement): readonly DccProblem[] =>
  walk(root, "Certificate", /^3\.[01]\./.test(root.attributes.get("schemaVersion") ?? ""), true);
