import {
  XmlBufferInputProvider,
  XmlDocument,
  XmlLibError,
  XsdValidator,
  xmlRegisterInputProvider,
} from "libxml2-wasm";
import type { DccProblem } from "./dcc-certificate";
import { everyElement, type XmlElement } from "./xml-element";

/**
 * The published schemas, by their path within the folder, e.g. "dcc/v3.3.0/dcc.xsd". They are not part of this
 * repository (LGPL v3, PTB); whoever runs the platform names a folder that holds them.
 */
export type DccSchemaFiles = ReadonlyMap<string, Uint8Array>;

type Compiled = { readonly validator: XsdValidator } | { readonly broken: string };

/** Schemas are found in memory under this address only; there is no provider for files or the network. */
const base = "schema:///";
const provider = new XmlBufferInputProvider({});
const register = (() => {
  let isDone = false;
  return (): void => {
    if (!isDone) isDone = xmlRegisterInputProvider(provider);
  };
})();

/** A schema is compiled once for each set of files; its memory lives as long as the files are used. */
const compiled = new WeakMap<DccSchemaFiles, Map<string, Compiled>>();

const compile = (files: DccSchemaFiles, path: string): Compiled => {
  register();
  for (const [name, bytes] of files) provider.addBuffer(base + name, bytes);
  try {
    const document = XmlDocument.fromBuffer(files.get(path) ?? new Uint8Array(), { url: base + path });
    try {
      return { validator: XsdValidator.fromDoc(document) };
    } finally {
      document.dispose();
    }
  } catch (error) {
    if (error instanceof XmlLibError) return { broken: error.message.trim().slice(0, 200) };
    throw error;
  } finally {
    for (const name of files.keys()) provider.removeBuffer(base + name);
  }
};

const validatorFor = (files: DccSchemaFiles, version: string): Compiled | null => {
  const path = `dcc/v${version}/dcc.xsd`;
  if (!files.has(path)) return null;
  const known = compiled.get(files) ?? new Map<string, Compiled>();
  compiled.set(files, known);
  const found = known.get(path) ?? compile(files, path);
  known.set(path, found);
  return found;
};

const inWords = (message: string): string =>
  message
    .trim()
    .replace(/\{[^{}]*\}/g, "")
    .replace(/\s+/g, " ")
    .slice(0, 300);

/** The parser tells a line; of the elements there, the one it names. */
const pathAt = (root: XmlElement, line: number, message: string): string => {
  const name = /Element '(?:\{[^}]*\})?([^']+)'/.exec(message)?.[1];
  const there = [...everyElement(root)].filter((element) => element.line === line);
  return (there.find((element) => element.name === name) ?? there[0])?.path ?? `/${root.name}`;
};

export type SchemaVerdict =
  | { readonly kind: "not-held" } // no schema of this version at hand
  | { readonly kind: "held"; readonly problems: readonly DccProblem[] };

/** Holds the document against the schema of its version. Schema files that cannot be used are told, not passed over. */
export const checkBySchema = (
  files: DccSchemaFiles | undefined,
  version: string,
  root: XmlElement,
  document: XmlDocument,
): SchemaVerdict => {
  const found = files ? validatorFor(files, version) : null;
  if (!found) return { kind: "not-held" };
  if ("broken" in found)
    return {
      kind: "held",
      problems: [
        {
          code: "schema",
          path: "",
          line: 0,
          message: `The schema files for DCC ${version} cannot be used (${found.broken}). Whoever runs the platform puts a whole set into the schema folder.`,
        },
      ],
    };
  try {
    found.validator.validate(document);
    return { kind: "held", problems: [] };
  } catch (error) {
    if (!(error instanceof XmlLibError)) throw error;
    const problems = error.details.map(({ message, line }) => ({
      code: "schema" as const,
      path: pathAt(root, line, message),
      line,
      message: `The schema of DCC ${version} does not allow this: ${inWords(message)} Ask the issuer for a corrected file.`,
    }));
    return { kind: "held", problems };
  }
};
