import { strToU8, type Zippable, zipSync } from "fflate";

export type SheetCell = string | number | { readonly xml: string };

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

export const columnLetters = (index: number): string =>
  (index >= 26 ? String.fromCharCode(64 + Math.floor(index / 26)) : "") +
  String.fromCharCode(65 + (index % 26));

const cellXml = (cell: SheetCell, address: string): string => {
  if (typeof cell === "number") return `<c r="${address}"><v>${cell}</v></c>`;
  if (typeof cell === "object") return cell.xml.replaceAll("@", address);
  return `<c r="${address}" t="inlineStr"><is><t xml:space="preserve">${escaped(cell)}</t></is></c>`;
};

const spreadsheet = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const relationships = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

export const sheetXml = (rows: readonly (readonly SheetCell[])[]): string =>
  `<?xml version="1.0" encoding="UTF-8"?><worksheet xmlns="${spreadsheet}"><sheetData>${rows
    .map(
      (cells, row) =>
        `<row r="${row + 1}">${cells.map((cell, at) => cellXml(cell, `${columnLetters(at)}${row + 1}`)).join("")}</row>`,
    )
    .join("")}</sheetData></worksheet>`;

/** An invented workbook of one sheet, after ECMA-376; style 1 is a date, as a spreadsheet writes it. */
export const workbook = (
  rows: readonly (readonly SheetCell[])[],
  more: { readonly strings?: readonly string[]; readonly parts?: Zippable } = {},
): Uint8Array =>
  zipSync({
    "xl/workbook.xml": strToU8(
      `<workbook xmlns="${spreadsheet}" xmlns:r="${relationships}"><sheets><sheet name="Hidden" sheetId="1" state="hidden" r:id="rId9"/><sheet name="Sensors" sheetId="2" r:id="rId1"/></sheets></workbook>`,
    ),
    "xl/_rels/workbook.xml.rels": strToU8(
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Target="worksheets/sheet7.xml"/><Relationship Id="rId9" Target="worksheets/sheet1.xml"/></Relationships>`,
    ),
    "xl/worksheets/sheet1.xml": strToU8(sheetXml([["not this one"]])),
    "xl/worksheets/sheet7.xml": strToU8(sheetXml(rows)),
    "xl/styles.xml": strToU8(
      `<styleSheet xmlns="${spreadsheet}"><numFmts><numFmt numFmtId="164" formatCode="0.00&quot; dm&quot;"/><numFmt numFmtId="165" formatCode="yyyy\\-mm"/></numFmts><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="164"/><xf numFmtId="165"/></cellXfs></styleSheet>`,
    ),
    "xl/sharedStrings.xml": strToU8(
      `<sst xmlns="${spreadsheet}">${(more.strings ?? []).map((text) => `<si><r><t>${escaped(text)}</t></r></si>`).join("")}</sst>`,
    ),
    ...more.parts,
  });
