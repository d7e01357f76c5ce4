import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  type PDFRawStream,
  PDFStream,
  PDFString,
} from "pdf-lib";
import { describe, expect, it } from "vitest";
import { type AttachedFile, attachFiles } from "@/lib/documents/certificate/attach";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { short } from "./examples";

const at = new Date("2026-10-16T08:30:00Z");
const file = (name: string, change: Partial<AttachedFile> = {}): AttachedFile => ({
  name,
  bytes: new TextEncoder().encode(`${name}: µ, ±, °C`.repeat(40)),
  mediaType: name.endsWith(".xml") ? "application/xml" : "application/json",
  relationship: "Source",
  description: `What ${name} holds`,
  ...change,
});
const files = [
  file("evidence.json", { relationship: "Data" }),
  file("dcc.xml", { relationship: "Alternative" }),
  file("content.json"),
];
const plain = await renderCertificate(short, { draft: false });
const attached = await attachFiles(plain, files, at);
const document = await PDFDocument.load(attached, { updateMetadata: false });
const text = (value: unknown): string =>
  value instanceof PDFString || value instanceof PDFHexString ? value.decodeText() : String(value);

const specifications = (of: PDFDocument) => {
  const tree = of.catalog.lookup(PDFName.of("Names"), PDFDict).lookup(PDFName.of("EmbeddedFiles"), PDFDict);
  const names = tree.lookup(PDFName.of("Names"), PDFArray);
  return Array.from({ length: names.size() / 2 }, (_, pair) => ({
    name: text(names.get(2 * pair)),
    specification: names.lookup(2 * pair + 1, PDFDict),
    reference: String(names.get(2 * pair + 1)),
  }));
};

describe("files attached to a certificate", () => {
  it("stand in the tree of names in its order, each with its bytes, media type, date and relationship", () => {
    const found = specifications(document).map(({ name, specification }) => {
      const stream = specification.lookup(PDFName.of("EF"), PDFDict).lookup(PDFName.of("F"), PDFStream);
      const parameters = stream.dict.lookup(PDFName.of("Params"), PDFDict);
      return {
        name,
        written: [specification.lookup(PDFName.of("F")), specification.lookup(PDFName.of("UF"))].map(text),
        relationship: String(specification.get(PDFName.of("AFRelationship"))),
        description: text(specification.get(PDFName.of("Desc"))),
        mediaType: (stream.dict.get(PDFName.of("Subtype")) as PDFName).decodeText(),
        size: Number(String(parameters.get(PDFName.of("Size")))),
        changedAt: text(parameters.get(PDFName.of("ModDate"))),
        bytes: Buffer.from(decodePDFRawStream(stream as PDFRawStream).decode()).toString("utf8"),
      };
    });
    const wanted = files
      .toSorted((one, other) => (one.name < other.name ? -1 : 1))
      .map(({ bytes, mediaType, relationship, ...given }) => ({
        ...{ name: given.name, written: [given.name, given.name], relationship: `/${relationship}` },
        ...{ description: given.description, mediaType, size: bytes.length },
        ...{ changedAt: "D:20261016083000Z", bytes: Buffer.from(bytes).toString("utf8") },
      }));
    expect(found).toEqual(wanted);
  });

  it("are associated with the document: each specification stands in the catalogue's AF", () => {
    const associated = document.catalog.lookup(PDFName.of("AF"), PDFArray);
    expect(associated.asArray().map(String)).toEqual(
      specifications(document).map(({ reference }) => reference),
    );
  });

  it("change neither metadata nor identity of the document, and give the same bytes again", async () => {
    const before = await PDFDocument.load(plain, { updateMetadata: false });
    const metadata = (of: PDFDocument) =>
      Buffer.from((of.catalog.lookup(PDFName.of("Metadata"), PDFStream) as PDFRawStream).contents).toString(
        "utf8",
      );
    expect(metadata(document)).toBe(metadata(before));
    expect(metadata(document)).toContain("<pdfaid:part>3</pdfaid:part>");
    expect(document.getModificationDate()).toEqual(before.getModificationDate());
    expect(document.getProducer()).toBe("Emfolio");
    expect(String(document.context.trailerInfo.ID)).toBe(String(before.context.trailerInfo.ID));
    expect(Buffer.from(await attachFiles(plain, files, at)).equals(Buffer.from(attached))).toBe(true);
    expect(Buffer.from(await attachFiles(plain, files.toReversed(), at)).equals(Buffer.from(attached))).toBe(
      true,
    );
  });

  it("are refused twice under one name, under a name that is a path, and into a document that has some", async () => {
    await expect(attachFiles(plain, [file("dcc.xml"), file("dcc.xml")], at)).rejects.toThrow("of one name");
    await expect(attachFiles(plain, [file("../dcc.xml")], at)).rejects.toThrow("no plain file name");
    await expect(attachFiles(attached, [file("other.xml")], at)).rejects.toThrow("already");
  });

  it("may be none", async () => {
    const none = await PDFDocument.load(await attachFiles(plain, [], at), { updateMetadata: false });
    expect(none.catalog.has(PDFName.of("AF"))).toBe(false);
    expect(none.getPageCount()).toBe(document.getPageCount());
  });
});
