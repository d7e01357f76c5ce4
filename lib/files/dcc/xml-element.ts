import type { DccPlace } from "@/lib/domain/calibration/dcc-certificate";

export const dccNamespace = "https://ptb.de/dcc";
export const siNamespace = "https://ptb.de/si";
export const signatureNamespace = "http://www.w3.org/2000/09/xmldsig#";

/** One element, copied out of the parser's memory. Comments and processing instructions are not content. */
export type XmlElement = DccPlace & {
  /** Local name; in messages and paths it stands without its prefix, which each file may choose anew. */
  readonly name: string;
  readonly namespace: string;
  /** Those without a namespace, by name. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** Its own text, as it stands, CDATA included; not that of its children. */
  readonly text: string;
};

export const placeOf = ({ path, line }: XmlElement): DccPlace => ({ path, line });

export const childrenNamed = (element: XmlElement | null, name: string): readonly XmlElement[] =>
  element?.children.filter((child) => child.name === name) ?? [];

export const childNamed = (element: XmlElement | null, ...names: readonly string[]): XmlElement | null => {
  let found: XmlElement | null = element;
  for (const name of names) found = childrenNamed(found, name)[0] ?? null;
  return found;
};

/** The element itself, then everything below it, in the order of the file. */
export function* everyElement(element: XmlElement): Generator<XmlElement> {
  yield element;
  for (const child of element.children) yield* everyElement(child);
}

/** The members of a list written with blanks between them. */
export const listMembers = (text: string): readonly string[] =>
  text.split(/[ \t\r\n]+/).filter((member) => member !== "");
