/** One element with what stands in it: elements, or text. A name bears its prefix, "dcc:" or "si:". */
export type Xml = {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly inside: readonly Xml[] | string;
};

type Inside = string | readonly (Xml | null)[];

/** Parts that are null are left out, so that what a content does not say needs no branch where it is written. */
export const element = (
  name: string,
  inside: Inside,
  attributes: Readonly<Record<string, string | null>> = {},
): Xml => ({
  name,
  attributes: Object.fromEntries(
    Object.entries(attributes).flatMap(([key, value]) => (value === null ? [] : [[key, value] as const])),
  ),
  inside: typeof inside === "string" ? inside : inside.filter((part) => part !== null),
});

/** An element that holds nothing is not written: the DCC knows no empty lists. */
export const elementOf = (
  name: string,
  inside: readonly (Xml | null)[],
  attributes: Readonly<Record<string, string | null>> = {},
): Xml | null => {
  const made = element(name, inside, attributes);
  return made.inside.length === 0 ? null : made;
};

/** XML 1.0, 2.2: other characters cannot be written at all, not even escaped. A lone half of a pair is none either. */
const unwritable =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for.
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

const escapes: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "\t": "&#9;",
  "\n": "&#10;",
  "\r": "&#13;",
};

const escaped = (text: string, which: RegExp): string =>
  text.replace(unwritable, "\uFFFD").replace(which, (character) => escapes[character] ?? character);
const inText = (text: string): string => escaped(text, /[&<>\r]/g);
const inAttribute = (text: string): string => escaped(text, /[&<>"\t\n\r]/g);

const lines = ({ name, attributes, inside }: Xml, indent: string): string => {
  const head = `${indent}<${name}${Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${inAttribute(value)}"`)
    .join("")}>`;
  if (typeof inside === "string") return `${head}${inText(inside)}</${name}>\n`;
  return `${head}\n${inside.map((child) => lines(child, `${indent}  `)).join("")}${indent}</${name}>\n`;
};

/** The whole document, UTF-8, one element a line: the same tree gives the same text. */
export const xmlDocument = (root: Xml): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${lines(root, "")}`;
