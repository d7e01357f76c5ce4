import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName, type PDFRef, PDFString } from "pdf-lib";

/** How an attached file stands to the document, ISO 19005-3:2012, 6.8: the key AFRelationship. */
export type AttachedFile = {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly mediaType: string;
  readonly relationship: "Alternative" | "Source" | "Data" | "Supplement";
  readonly description: string;
};

const demandNames = (files: readonly AttachedFile[]): void => {
  const names = files.map(({ name }) => name);
  if (new Set(names).size !== names.length)
    throw new Error(`Two files of one name cannot be attached to one document: ${names.join(", ")}`);
  const odd = names.find((name) => !/^[a-z0-9][a-z0-9.-]*$/.test(name));
  if (odd !== undefined) throw new Error(`The name ${JSON.stringify(odd)} is no plain file name`);
};

/** Names are compared byte by byte by whoever looks one up in the tree (ISO 32000-1, 7.9.6): sorted so. */
const byName = (a: AttachedFile, b: AttachedFile): number => (a.name < b.name ? -1 : 1);

/** The file's stream and its specification, which names its relationship and its media type. */
const embed = ({ context }: PDFDocument, file: AttachedFile, at: Date): PDFRef => {
  const stream = context.flateStream(file.bytes, {
    Type: "EmbeddedFile",
    Subtype: file.mediaType,
    Params: { Size: file.bytes.length, ModDate: PDFString.fromDate(at) },
  });
  const held = context.register(stream);
  return context.register(
    context.obj({
      Type: "Filespec",
      F: PDFString.of(file.name),
      UF: PDFHexString.fromText(file.name),
      Desc: PDFHexString.fromText(file.description),
      AFRelationship: file.relationship,
      EF: { F: held, UF: held },
    }),
  );
};

/**
 * The same document with files in it, as PDF/A-3 asks (ISO 19005-3:2012, 6.8): in the tree of embedded files and in
 * the catalogue's AF. `at` is their date of modification. Nothing comes from a clock or from chance, metadata and /ID
 * stay: the same input gives the same bytes. It writes the file anew, so it comes before the seal, never after.
 */
export const attachFiles = async (
  pdf: Uint8Array,
  files: readonly AttachedFile[],
  at: Date,
): Promise<Uint8Array> => {
  demandNames(files);
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  const { catalog, context } = document;
  const names = catalog.lookupMaybe(PDFName.of("Names"), PDFDict);
  if (names?.has(PDFName.of("EmbeddedFiles")) || catalog.has(PDFName.of("AF")))
    throw new Error("This document has attached files already");
  const ordered = files
    .toSorted(byName)
    .map((file) => ({ name: file.name, specification: embed(document, file, at) }));
  if (ordered.length > 0) {
    const tree = context.obj({
      Names: ordered.flatMap(({ name, specification }) => [PDFHexString.fromText(name), specification]),
    });
    const held = names ?? context.obj({});
    held.set(PDFName.of("EmbeddedFiles"), context.register(tree));
    catalog.set(PDFName.of("Names"), held);
    const associated = PDFArray.withContext(context);
    for (const { specification } of ordered) associated.push(specification);
    catalog.set(PDFName.of("AF"), associated);
  }
  // Object streams would do no harm, but a plain table of references is what every checker reads.
  return document.save({ useObjectStreams: false, addDefaultPage: false, updateFieldAppearances: false });
};
