import {
  XmlElement as Node,
  ParseOption,
  XmlCData,
  XmlDocument,
  XmlEntityReference,
  XmlLibError,
  XmlText,
} from "libxml2-wasm";
import type { DccProblem } from "./dcc-certificate";
import type { XmlElement } from "./xml-element";
import { xmlText } from "./xml-text";

/** A certificate nests about 20 deep; nobody writes 60 by hand or by program. */
const deepest = 60;
const mostElements = 100_000;

type Growing = {
  readonly name: string;
  readonly namespace: string;
  readonly path: string;
  readonly line: number;
  readonly attributes: Map<string, string>;
  readonly children: XmlElement[];
  text: string;
};

class Stop extends Error {
  readonly problem: DccProblem;
  constructor(
    code: DccProblem["code"],
    place: { readonly path: string; readonly line: number },
    message: string,
  ) {
    super(message);
    this.problem = { code, path: place.path, line: place.line, message };
  }
}

const attributesOf = (node: Node): Map<string, string> => {
  const found = new Map<string, string>();
  for (const attribute of node.attrs)
    if (attribute.namespaceUri === "") found.set(attribute.name, attribute.value);
  return found;
};

/** The parser counts to 65535; beyond, the path alone tells the place. */
const lineOf = (node: Node): number => (node.line < 65_535 ? node.line : 0);

const childNodes = (node: Node): Node["firstChild"][] => {
  const found: Node["firstChild"][] = [];
  for (let child = node.firstChild; child !== null; child = child.next) found.push(child);
  return found;
};

/** Copies the tree, counting as it goes; repeated names are numbered from 1 as XPath does. */
const copyTree = (root: Node): XmlElement => {
  let count = 0;
  const copy = (node: Node, path: string, depth: number): XmlElement => {
    const element: Growing = {
      name: node.name,
      namespace: node.namespaceUri,
      path,
      line: lineOf(node),
      attributes: attributesOf(node),
      children: [],
      text: "",
    };
    count += 1;
    if (depth > deepest)
      throw new Stop(
        "forbidden",
        element,
        `Elements are nested more than ${deepest} deep. This is no calibration certificate; ask the issuer for another file.`,
      );
    if (count > mostElements)
      throw new Stop(
        "too-large",
        element,
        `The file has more than ${mostElements} elements. Ask the issuer for the certificate without raw data.`,
      );
    const nodes = childNodes(node);
    const totals = new Map<string, number>();
    for (const child of nodes)
      if (child instanceof Node) totals.set(child.name, (totals.get(child.name) ?? 0) + 1);
    const met = new Map<string, number>();
    for (const child of nodes) {
      if (child instanceof XmlText || child instanceof XmlCData) element.text += child.content;
      if (child instanceof XmlEntityReference)
        throw new Stop(
          "forbidden",
          element,
          `The entity &${child.name}; is not known. Write the character itself.`,
        );
      if (!(child instanceof Node)) continue;
      const index = (met.get(child.name) ?? 0) + 1;
      met.set(child.name, index);
      const step = (totals.get(child.name) ?? 0) > 1 ? `${child.name}[${index}]` : child.name;
      element.children.push(copy(child, `${path}/${step}`, depth + 1));
    }
    return element;
  };
  return copy(root, `/${root.name}`, 1);
};

const notWellFormed = (error: XmlLibError): DccProblem => {
  const [first] = error.details.filter(({ level }) => level >= 2);
  const said = (first?.message ?? error.message).trim().replace(/\s+/g, " ").slice(0, 200);
  return {
    code: "not-xml",
    path: "",
    line: first?.line ?? 0,
    message: `This is not well-formed XML (${said}). Fetch the file from its issuer again; it was cut off or changed by hand.`,
  };
};

/**
 * Parses without network, entities or files and hands the tree to `use`; the parser's memory is released afterwards,
 * whatever happens. Nothing of the file can throw.
 */
export const withXml = <T>(
  bytes: Uint8Array,
  refused: (problem: DccProblem) => T,
  use: (root: XmlElement, document: XmlDocument) => T,
): T => {
  const text = xmlText(bytes);
  if (!text.ok) return refused(text.problem);
  let document: XmlDocument;
  try {
    document = XmlDocument.fromString(text.text, {
      encoding: "utf-8",
      option:
        ParseOption.XML_PARSE_NONET | ParseOption.XML_PARSE_NO_XXE | ParseOption.XML_PARSE_NO_SYS_CATALOG,
    });
  } catch (error) {
    if (error instanceof XmlLibError) return refused(notWellFormed(error));
    throw error;
  }
  try {
    if (document.dtd !== null)
      return refused({
        code: "forbidden",
        path: "",
        line: 1,
        message: "The file has a document type. Ask the issuer for the file without it.",
      });
    // The library cannot step past a processing instruction, and none is content.
    for (const instruction of document.find("//processing-instruction()")) instruction.remove();
    return use(copyTree(document.root), document);
  } catch (error) {
    if (error instanceof Stop) return refused(error.problem);
    throw error;
  } finally {
    document.dispose();
  }
};
