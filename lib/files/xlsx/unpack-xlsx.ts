import { strFromU8, type UnzipFileInfo, unzipSync } from "fflate";

const most = { entries: 300, entryBytes: 8_000_000, totalBytes: 16_000_000 } as const;

export type XlsxParts =
  | { readonly ok: true; readonly parts: ReadonlyMap<string, Uint8Array> }
  | { readonly ok: false; readonly message: string };

class TooLarge extends Error {}

/** The parts that hold cells; pictures, macros and links are left packed. */
const isWanted = (name: string): boolean =>
  /^xl\/(workbook\.xml|sharedStrings\.xml|styles\.xml|_rels\/workbook\.xml\.rels|worksheets\/[^/]+\.xml)$/i.test(
    name,
  );

/** Counted before anything is unpacked; each part is unpacked into a room of the size it states and never beyond. */
const counter = () => {
  let entries = 0;
  let total = 0;
  return ({ name, originalSize }: UnzipFileInfo): boolean => {
    entries += 1;
    if (entries > most.entries) throw new TooLarge(`it has more than ${most.entries} parts`);
    if (!isWanted(name)) return false;
    total += originalSize;
    if (originalSize > most.entryBytes || total > most.totalBytes)
      throw new TooLarge(`unpacked it would have more than ${most.entryBytes / 1_000_000} MB`);
    return true;
  };
};

/** The XML parts of a workbook, by name. A ZIP made to burst is refused by what it says of itself. */
export const unpackXlsx = (bytes: Uint8Array): XlsxParts => {
  try {
    const files = unzipSync(bytes, { filter: counter() });
    return {
      ok: true,
      parts: new Map(Object.entries(files).map(([name, part]) => [name.toLowerCase(), part])),
    };
  } catch (error) {
    if (error instanceof TooLarge)
      return {
        ok: false,
        message: `This is no list of sensors: ${error.message}. Copy the list into the template and choose that.`,
      };
    return {
      ok: false,
      message: "The spreadsheet is damaged or protected by a password. Save it anew as .xlsx without one.",
    };
  }
};

export const partText = (part: Uint8Array): string => strFromU8(part);
