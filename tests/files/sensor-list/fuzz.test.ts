import fc from "fast-check";
import { strToU8 } from "fflate";
import { describe, expect, it } from "vitest";
import { readPhoto } from "@/lib/files/image/read-photo";
import { readSensorFile, type SensorFileRead } from "@/lib/files/sensor-list/read-sensor-file";
import { jpeg, webp } from "../../support/photos";
import { png } from "../../support/png";
import { workbook } from "../../support/workbook";

// 2 000 cases of one fixed seed: what fails once fails again.
const seed = 20_260_304;
const lines = [
  { position: 1, typeLetter: "K" },
  { position: 2, typeLetter: "N" },
];

type Mutation = {
  readonly at: number;
  readonly kind: "flip" | "cut" | "insert" | "double" | "swap";
  readonly byte: number;
};
const mutation: fc.Arbitrary<Mutation> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  kind: fc.constantFrom("flip", "cut", "insert", "double", "swap"),
  byte: fc.integer({ min: 0, max: 255 }),
});

const mutated = (bytes: Uint8Array, { at, kind, byte }: Mutation): Uint8Array => {
  const place = Math.floor(at * bytes.length);
  const head = bytes.slice(0, place);
  const tail = bytes.slice(place);
  if (kind === "cut") return head;
  if (kind === "insert") return Uint8Array.from([...head, byte, byte ^ 0xff, ...tail]);
  if (kind === "double") return Uint8Array.from([...head, ...tail.slice(0, byte), ...tail]);
  if (kind === "swap") return Uint8Array.from([...tail, ...head]);
  const flipped = Uint8Array.from(bytes);
  flipped[place] = (flipped[place] ?? 0) ^ (byte || 1);
  return flipped;
};
const anyOf = (samples: readonly Uint8Array[]) =>
  fc
    .tuple(fc.constantFrom(...samples), fc.array(mutation, { minLength: 1, maxLength: 4 }))
    .map(([sample, changes]) => changes.reduce(mutated, sample));

/** Either sensors that are whole, or problems that each say something; a problem of a cell says where. */
const isRowsOrRefusal = (read: SensorFileRead): boolean => {
  if (!read.ok)
    return (
      read.problems.length > 0 &&
      read.problems.every(
        (text) => text.length > 10 && (!/column/.test(text.slice(0, 20)) || /^Row \d+/.test(text)),
      )
    );
  const keys = new Set(read.sensors.map(({ serial }) => serial.toLowerCase()));
  return (
    read.sensors.length > 0 &&
    read.sensors.length <= 200 &&
    keys.size === read.sensors.length &&
    read.sensors.every(
      ({ serial, line, position }) =>
        serial !== "" && !/[\p{Cc}\p{Cf}]/u.test(serial) && line >= 1 && (position === 1 || position === 2),
    )
  );
};

const text =
  'serial;type;loop ohm;polarity;condition;note;lot;end\n"A;1";K;12.5;ok;;;H7;1\nB2;N;;reversed;deviates;bent;H8;second\n=1+1;K;0;;;;;\n';
const sheet = workbook(
  [
    ["serial", "type", "loop ohm", "note"],
    ["A1", "K", 12.5, "x"],
    ["B2", "N", 3, { xml: '<c r="@" t="s"><v>0</v></c>' }],
  ],
  { strings: ["shared & kept"] },
);
const counts = { rows: 0, refused: 0 };
const tally = (isRead: boolean) => {
  counts[isRead ? "rows" : "refused"] += 1;
};

describe("2 000 hostile files", () => {
  it("of lists as CSV: rows or a refusal, never a fault", () => {
    fc.assert(
      fc.property(
        anyOf([strToU8(text), Uint8Array.from(Buffer.from(`\ufeff${text}`, "utf16le"))]),
        (bytes) => {
          const read = readSensorFile(bytes, lines, null);
          tally(read.ok);
          expect(isRowsOrRefusal(read)).toBe(true);
        },
      ),
      { seed, numRuns: 500 },
    );
  });

  it("of cells a person or a program may write: what is wrong is told by row and column", () => {
    const cell = fc.oneof(
      fc.string({ unit: "binary", maxLength: 12 }),
      fc.constantFrom(
        "",
        "ok",
        "12,5",
        "-1",
        "1e9",
        "NaN",
        "\u202e1",
        "\u200b",
        "=cmd|' /C calc'!A0",
        '"',
        "K",
        "N",
      ),
    );
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 6 }),
        (rows) => {
          const quoted = rows.map((row) => row.map((each) => `"${each.replaceAll('"', '""')}"`).join(","));
          const read = readSensorFile(strToU8(`serial,type,loop ohm\n${quoted.join("\n")}\n`), lines, 1);
          tally(read.ok);
          expect(isRowsOrRefusal(read)).toBe(true);
        },
      ),
      { seed, numRuns: 400 },
    );
  });

  it("of lists as XLSX: the same", () => {
    fc.assert(
      fc.property(anyOf([sheet]), (bytes) => {
        const read = readSensorFile(bytes, lines, null);
        tally(read.ok);
        expect(isRowsOrRefusal(read)).toBe(true);
      }),
      { seed, numRuns: 300 },
    );
  });

  it("of workbooks whose parts are whole and whose XML is not what it should be", () => {
    const part = fc.constantFrom(
      "xl/worksheets/sheet7.xml",
      "xl/sharedStrings.xml",
      "xl/styles.xml",
      "xl/workbook.xml",
      "xl/_rels/workbook.xml.rels",
    );
    const xml = strToU8(
      '<worksheet><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>serial</t></is></c></row><row r="2"><c r="A2"><v>7</v></c></row></sheetData></worksheet>',
    );
    fc.assert(
      fc.property(part, anyOf([xml]), (name, bytes) => {
        const read = readSensorFile(workbook([["serial"], ["A"]], { parts: { [name]: bytes } }), lines, 1);
        tally(read.ok);
        expect(isRowsOrRefusal(read)).toBe(true);
      }),
      { seed, numRuns: 200 },
    );
  });

  it("of photos: a picture of some size and a known kind, or a reason", () => {
    const samples = [
      jpeg(64, 48, { orientation: 6, after: "x" }),
      png(16, 16),
      webp(64, 48, [["EXIF", "GPS!"]]),
    ];
    fc.assert(
      fc.property(fc.oneof(anyOf(samples), fc.uint8Array({ maxLength: 200 })), (bytes) => {
        const read = readPhoto(bytes);
        tally(read.ok);
        if (read.ok) {
          const { mediaType, width, height, bytes: kept } = read.photo;
          expect(width * height).toBeGreaterThan(0);
          // What is kept is read again as the same picture.
          expect(readPhoto(kept)).toMatchObject({ ok: true, photo: { mediaType, width, height } });
        } else expect(read.message.length).toBeGreaterThan(10);
      }),
      { seed, numRuns: 600 },
    );
  });

  it("were two thousand, and both ends of the road were walked", () => {
    expect(counts.rows + counts.refused).toBe(2000);
    expect(counts.rows).toBeGreaterThan(100);
    expect(counts.refused).toBeGreaterThan(500);
  });
});
