import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  type PDFDocument,
  PDFHexString,
  PDFName,
  PDFRawStream,
  PDFString,
} from "pdf-lib";
import { copyOf } from "./bytes";
import type { Attachment } from "./verdict";

const embedded = PDFName.of("EmbeddedFiles");

/** The files that a PDF carries, by the tree of names that ISO 32000-1, 7.9.6 and 7.11.4, describe. */
export const readAttachments = ({ catalog }: PDFDocument): readonly Attachment[] => {
  const tree = catalog.lookupMaybe(PDFName.of("Names"), PDFDict)?.lookupMaybe(embedded, PDFDict);
  return tree === undefined ? [] : namesBelow(tree, 0).flatMap(attachmentOf);
};

const deepest = 8;

function namesBelow(node: PDFDict, depth: number): readonly PDFDict[] {
  if (depth > deepest) return [];
  const names = node.lookupMaybe(PDFName.of("Names"), PDFArray);
  const kids = node.lookupMaybe(PDFName.of("Kids"), PDFArray);
  const here = names ? Array.from({ length: names.size() >> 1 }, (_, at) => names.lookup(2 * at + 1)) : [];
  const below = kids ? Array.from({ length: kids.size() }, (_, at) => kids.lookup(at)) : [];
  return [
    ...here.filter((one) => one instanceof PDFDict),
    ...below.flatMap((kid) => (kid instanceof PDFDict ? namesBelow(kid, depth + 1) : [])),
  ];
}

function attachmentOf(specification: PDFDict): readonly Attachment[] {
  const name = specification.lookup(PDFName.of("UF")) ?? specification.lookup(PDFName.of("F"));
  const stream = specification.lookupMaybe(PDFName.of("EF"), PDFDict)?.lookup(PDFName.of("F"));
  const isText = name instanceof PDFHexString || name instanceof PDFString;
  if (!isText || !(stream instanceof PDFRawStream)) return [];
  return [{ name: name.decodeText(), bytes: copyOf(decodePDFRawStream(stream).decode()) }];
}
