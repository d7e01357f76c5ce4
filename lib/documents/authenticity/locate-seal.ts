import { derLength } from "./asn1";
import { type Bytes, copyOf, fromHex, joined } from "./bytes";
import type { StepFinding } from "./findings";

export type LocatedSeal = {
  /** Every byte of the file but the container. */
  readonly covered: Bytes;
  /** The signature container, DER, without its padding. */
  readonly container: Bytes;
  readonly sealedAt: Date | null;
};

export type Location = {
  readonly findings: readonly StepFinding[];
  /** undefined where there is nothing to go on with. */
  readonly seal?: LocatedSeal;
};

/** The data that a customer is given beside the PDF; it may begin with a byte order mark. */
const dccStart = /^(?:\xef\xbb\xbf)?\s*<(?:\?xml\s|(?:\w+:)?digitalCalibrationCertificate\b)/;

/** Nothing speaks against it: its seal is that of the PDF it is attached to. */
const notThePdf: Location = {
  findings: [
    {
      ...{ key: "pdf", state: "unknown" },
      text: "This is XML, and what is checked here is the PDF. The same DCC is attached to it: check the PDF.",
      against: { verdict: "indeterminate", indication: "NOT_THE_PDF" },
    },
  ],
};

const latin1 = (bytes: Uint8Array): string => new TextDecoder("latin1").decode(bytes);

/**
 * Where the seal is and what it covers, from the bytes alone and before anything is parsed: attacks on signed PDFs live
 * from the difference between what a reader shows and what a checker found when it followed the file's own directions.
 */
export const locateSeal = (file: Uint8Array): Location => {
  const text = latin1(file);
  if (dccStart.test(text)) return notThePdf;
  if (!text.startsWith("%PDF-")) return fail("pdf", "FORMAT_FAILURE", "This is not a PDF file.");
  const pdf = { key: "pdf", state: "passed", text: "The file is a PDF." } as const;
  const ranges = [...text.matchAll(/\/ByteRange\s*\[/g)];
  const [range] = ranges;
  if (range === undefined)
    return fail(
      "one-seal",
      "NO_SEAL",
      "This file carries no seal: nothing in it shows where it comes from.",
      [pdf],
    );
  if (ranges.length > 1)
    return fail(
      "one-seal",
      "FORMAT_FAILURE",
      "This file carries more than one signature. The laboratory seals a document once; somebody added to it.",
      [pdf],
    );
  const passed = [pdf, { key: "one-seal", state: "passed", text: "It carries one seal." }] as const;
  const found = coverageOf(file, text, range.index);
  if (typeof found === "string") return fail("coverage", "FORMAT_FAILURE", found, passed);
  const text3 = "The seal covers every byte of the file, and nothing was added after it.";
  return { findings: [...passed, { key: "coverage", state: "passed", text: text3 }], seal: found };
};

function fail(
  key: "pdf" | "one-seal" | "coverage",
  indication: "FORMAT_FAILURE" | "NO_SEAL",
  text: string,
  before: readonly StepFinding[] = [],
): Location {
  return {
    findings: [...before, { key, state: "failed", text, against: { verdict: "total-failed", indication } }],
  };
}

/** The seal, or in words why it does not cover the whole file. */
function coverageOf(file: Uint8Array, text: string, at: number): LocatedSeal | string {
  const said = /^\/ByteRange\s*\[\s*(\d{1,10})\s+(\d{1,10})\s+(\d{1,10})\s+(\d{1,10})\s*\]/.exec(
    text.slice(at, at + 100),
  );
  if (!said) return "The seal does not say which bytes it covers.";
  const [start = 0, from = 0, to = 0, rest = 0] = said.slice(1).map(Number);
  if (to + rest > file.length)
    return `The file is cut short: it has ${file.length} bytes, its seal speaks of ${to + rest}.`;
  if (to + rest < file.length)
    return `${added(file.length - to - rest)} added to the file after it was sealed.`;
  const isHole =
    start !== 0 || from <= at || to <= from || !/\/Contents\s*$/.test(text.slice(0, from).slice(-20));
  if (isHole || file[from] !== 0x3c || file[to - 1] !== 0x3e)
    return "The seal leaves out a part of the file.";
  const container = containerOf(text.slice(from + 1, to - 1));
  if (container === undefined)
    return "Between the parts that the seal covers stands something that is no seal.";
  if (!hasOneRevision(text)) return "The file has an earlier revision in it. A sealed document has one.";
  const covered = joined([file.subarray(0, from), file.subarray(to)]);
  return { covered, container, sealedAt: sealedAt(text, from, to) };
}

const added = (count: number): string => (count === 1 ? "One byte was" : `${count} bytes were`);

/** Written in one case of letters and padded with zeros only, so that not one digit can differ unnoticed. */
function containerOf(digits: string): Bytes | undefined {
  if (!/^(?:[0-9a-f]*|[0-9A-F]*)$/.test(digits)) return undefined;
  const bytes = fromHex(digits);
  const length = bytes === undefined ? undefined : derLength(bytes);
  if (bytes === undefined || length === undefined || length > bytes.length) return undefined;
  return bytes.subarray(length).every((byte) => byte === 0) ? copyOf(bytes.subarray(0, length)) : undefined;
}

/** It ends as a PDF ends, and what stands before does not point to an earlier table of contents. */
function hasOneRevision(text: string): boolean {
  const end = /startxref\s+\d+\s+%%EOF\s*$/.exec(text.slice(-100));
  const trailer = text.lastIndexOf("trailer");
  return end !== null && trailer > 0 && !/\/Prev\b/.test(text.slice(trailer));
}

/** What the seal's own dictionary says; it is covered, but it is the sealing clock's word. */
function sealedAt(text: string, from: number, to: number): Date | null {
  const around = text.slice(Math.max(0, from - 1000), from) + text.slice(to, to + 1000);
  const said = /\/M\s*\(D:(\d{4})(\d\d)(\d\d)(\d\d)(\d\d)(\d\d)Z/.exec(around);
  if (!said) return null;
  const [year, month, day, hour, minute, second] = said.slice(1);
  const at = new Date(`${year}-${month}-${day}T${hour}:${minute}:${second}Z`);
  return Number.isNaN(at.getTime()) ? null : at;
}
