import { PDFArray, PDFDocument, PDFHexString, PDFName, type PDFRef, PDFString } from "pdf-lib";
import { type Bytes, copyOf, joined, sha256, toHex } from "@/lib/documents/authenticity/bytes";
import { composeCms } from "@/lib/documents/authenticity/cms";
import { oid } from "@/lib/documents/authenticity/identifiers";
import type { SealKeyMaterial } from "./key-material";
import { signCms } from "./sign-cms";

export type SealOptions = {
  /** What the seal says of its time; nothing is proven by it. */
  readonly at: Date;
  /** SHA-256 of the signature value in, an RFC 3161 timestamp token (DER) out; null = no timestamp. */
  readonly timestamp: ((signatureHash: Uint8Array) => Promise<Uint8Array>) | null;
  readonly reason: string;
  readonly location: string;
};

/** For the signature, its attributes and a timestamp token with its certificates. */
const roomForSignature = 12_288;

/**
 * Seals a finished PDF: one invisible signature field, shaped as PAdES B-T (ETSI EN 319 142-1), over every byte but the
 * signature itself. The file is written once, with no revision before the seal: whoever checks it can refuse any file
 * that has more than one.
 */
export const sealPdf = async (
  pdf: Uint8Array,
  key: SealKeyMaterial,
  options: SealOptions,
): Promise<Uint8Array<ArrayBuffer>> => {
  const room =
    roomForSignature + [key.certificate, ...key.chain].reduce((sum, { length }) => sum + length, 0);
  const { before, after } = fillRange(await withField(pdf, room, options), room);
  const cms = await signCms(
    { contentType: oid.data, content: null, digest: await sha256(joined([before, after])) },
    key,
  );
  const token = await options.timestamp?.(await sha256(cms.signature));
  const unsignedAttributes = token ? [{ type: oid.timestampToken, value: copyOf(token) }] : [];
  const container = composeCms({ ...cms, unsignedAttributes });
  if (container.length > room)
    throw new Error(
      `The signature with its timestamp takes ${container.length} bytes and has room for ${room}: the timestamp authority sends more certificates than can be kept.`,
    );
  const hex = toHex(container).padEnd(2 * room, "0");
  return joined([before, new TextEncoder().encode(`<${hex}>`), after]);
};

/** Wide enough for any offset of a file below 10 GB; what is not needed becomes blanks. */
const widest = 9_999_999_999;

/** The same document with the field of a signature that is still zeros. */
async function withField(
  pdf: Uint8Array,
  room: number,
  { at, reason, location }: SealOptions,
): Promise<Bytes> {
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  const { context, catalog } = document;
  if (catalog.has(PDFName.of("AcroForm")))
    throw new Error("This document has a form already: it cannot be sealed.");
  const signature = context.register(
    context.obj({
      Type: "Sig",
      Filter: "Adobe.PPKLite",
      SubFilter: "ETSI.CAdES.detached",
      ByteRange: [0, widest, widest, widest],
      Contents: PDFHexString.of("0".repeat(2 * room)),
      M: PDFString.fromDate(at),
      ...(reason ? { Reason: PDFHexString.fromText(reason) } : {}),
      ...(location ? { Location: PDFHexString.fromText(location) } : {}),
      // ISO 32000-1, 12.8.2.2: certified, and nothing may be changed hereafter.
      Reference: [
        {
          Type: "SigRef",
          TransformMethod: "DocMDP",
          TransformParams: { Type: "TransformParams", P: 1, V: PDFName.of("1.2") },
        },
      ],
    }),
  );
  addWidget(document, signature);
  catalog.set(PDFName.of("Perms"), context.obj({ DocMDP: signature }));
  return copyOf(
    await document.save({ useObjectStreams: false, addDefaultPage: false, updateFieldAppearances: false }),
  );
}

/** Of no size, locked, printed, and with an appearance, as PDF/A asks of every widget. */
function addWidget(document: PDFDocument, signature: PDFRef): void {
  const { context, catalog } = document;
  const page = document.getPage(0);
  const appearance = context.register(
    context.stream("", { Type: "XObject", Subtype: "Form", BBox: [0, 0, 0, 0], Resources: {} }),
  );
  const widget = context.register(
    context.obj({
      ...{ Type: "Annot", Subtype: "Widget", FT: "Sig", T: PDFString.of("Seal"), V: signature },
      ...{ Rect: [0, 0, 0, 0], F: 132, P: page.ref, AP: { N: appearance } },
    }),
  );
  const annotations = page.node.lookupMaybe(PDFName.of("Annots"), PDFArray);
  if (annotations) annotations.push(widget);
  else page.node.set(PDFName.of("Annots"), context.obj([widget]));
  // SigFlags: signatures exist, and only appending would keep them.
  catalog.set(PDFName.of("AcroForm"), context.obj({ Fields: [widget], SigFlags: 3 }));
}

/** The bytes before and after the container, with their lengths written into the range they say. */
function fillRange(file: Bytes, room: number): { readonly before: Bytes; readonly after: Bytes } {
  const text = latin1(file);
  const container = `<${"0".repeat(2 * room)}>`;
  const from = text.indexOf(container);
  const empty = `[ 0 ${widest} ${widest} ${widest} ]`;
  const range = text.indexOf(empty);
  if (from < 0 || range < 0 || text.indexOf(container, from + 1) >= 0 || text.indexOf(empty, range + 1) >= 0)
    throw new Error("The place of the signature was not found in the written document.");
  const to = from + container.length;
  const filled = `[ 0 ${from} ${to} ${file.length - to} ]`.padEnd(empty.length);
  const written = copyOf(file);
  written.set(new TextEncoder().encode(filled), range);
  return { before: copyOf(written.subarray(0, from)), after: copyOf(written.subarray(to)) };
}

function latin1(bytes: Uint8Array): string {
  return new TextDecoder("latin1").decode(bytes);
}
