import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { listColumns } from "@/lib/domain/intake/columns";
import { listTemplate } from "@/lib/domain/intake/template";
import { readSensorFile } from "@/lib/files/sensor-list/read-sensor-file";
import { workbook } from "../../support/workbook";

const lines = [
  { position: 1, typeLetter: "K" },
  { position: 2, typeLetter: "N" },
  { position: 3, typeLetter: "N" },
];
const csv = (text: string, chosen: number | null = 1) => readSensorFile(strToU8(text), lines, chosen);
const sheet = (rows: Parameters<typeof workbook>[0], more = {}) =>
  readSensorFile(workbook(rows, more), lines, 1);
const sensorsOf = (read: ReturnType<typeof csv>) =>
  read.ok ? read.sensors : expect.fail(read.problems.join("\n"));
const problemsOf = (read: ReturnType<typeof csv>) => (read.ok ? expect.fail("it was read") : read.problems);

describe("a list as CSV", () => {
  it("knows its columns by many names and its words as people write them", () => {
    const read = csv(
      "S/N;Type;Loop resistance (Ω);Insulation (MΩ);Polarity;Condition;Note;Lot;Roll;End;Sheath;Wire mm;Length_mm;Lead;Connector;Used before;Junction\n" +
        'A 1;K;12.5;500;correct;Deviates;"tip; bent";H7;R3;1;mineral-insulated;0.5;500;PTFE or PFA;Miniature plug;yes;grounded\n' +
        "\n" +
        "#2;;;;Reversed;ok;;;;;;;;;;;\n",
    );
    expect(sensorsOf(read)).toEqual([
      {
        line: 2,
        position: 1,
        serial: "A 1",
        condition: "deviates",
        conditionNote: "tip; bent",
        loopResistanceOhm: 12.5,
        insulationMegaohm: 500,
        polarity: "ok",
        typeCheck: "not-checked",
        grounding: "grounded",
        build: {
          lot: "H7",
          roll: "R3",
          end: "first",
          sheath: "mineral-insulated",
          wireMillimetre: 0.5,
          lengthMillimetre: 500,
          leadInsulation: "ptfe",
          connector: "miniature-plug",
          isUsed: true,
        },
      },
      expect.objectContaining({
        line: 4,
        serial: "#2",
        polarity: "reversed",
        condition: "as-described",
        build: {},
      }),
    ]);
  });

  it("says of every wrong cell its row, its column and the remedy, all at once", () => {
    const read = csv(
      'serial,loop ohm,polarity,type,note,condition\nA1,"12,5",upside-down,K,,\nA1,x,ok,S,,deviates\n,1,ok,K,,\nB\u200b2,1,ok,K,,\n',
    );
    expect(problemsOf(read)).toEqual([
      expect.stringMatching(
        /^Row 2, column polarity: “upside-down” is not one of: not-checked, ok, reversed/,
      ),
      "Row 2, column loop ohm: “12,5” has a comma. Write 12.5, with a decimal point.",
      expect.stringMatching(/^Row 3, column serial: “A1” stands in row 2 as well/),
      expect.stringMatching(/^Row 3, column type: This order has no line of type S/),
      expect.stringMatching(/^Row 4, column serial: The serial is missing/),
      expect.stringMatching(/^Row 5, column serial: .*zero-width space \(U\+200B\)/),
    ]);
  });

  it("finds the line by what the list says, and asks where two fit", () => {
    const read = csv("serial,type,order line\nA,K,\nB,N,3\nC,type n,2\n", null);
    expect(sensorsOf(read).map(({ position }) => position)).toEqual([1, 3, 2]);
    expect(problemsOf(csv("serial,type\nA,N\n", null))[0]).toContain("Lines 2, 3 fit");
    expect(sensorsOf(csv("serial,type\nA,N\n", 3))[0]?.position).toBe(3);
    expect(problemsOf(csv("serial,type,line\nA,K,2\n"))[0]).toContain("Line 2 orders type N, this says K");
    expect(problemsOf(csv("serial,line\nA,9\n"))[0]).toContain("no line 9");
  });

  it.each([
    ["serial,colour\nA,red\n", "Row 1, column colour: This column is not known"],
    ["serial,S/N\nA,B\n", "Row 1, column S/N: This column is there twice"],
    ["polarity\nok\n", "There is no column of serials"],
    ["serial\n", "a header and no sensors"],
    ["", "The file is empty"],
    ['serial,note\nA,"open\n', "Row 2: A quotation mark is left open"],
    ["serial,loop ohm\nA,12,5\n", "Row 2: This line has 3 cells, the header 2"],
    [`serial\n${"A\n".repeat(201)}`, "Row 202: At most 200 sensors"],
    [`serial\n${"x".repeat(1001)}\n`, "Row 2, column serial: This cell has more than 1000 characters"],
    [`serial\n${"x".repeat(10_000_000)}\n`, "has 10000008 bytes; a list of 200 sensors has less than"],
    ["serial\n\u0000\u0001\u0002\n", "a binary file"],
  ])("refuses %#", (text, said) => {
    expect(problemsOf(csv(text)).join("\n")).toContain(said);
  });

  it("opens its own template, with a column for each thing", () => {
    const [header] = listTemplate().split("\r\n");
    expect(header?.split(",")).toHaveLength(listColumns.length);
    const row = listColumns
      .map(({ field }) => (field === "serial" ? "A1" : field === "line" ? "1" : ""))
      .join(",");
    expect(sensorsOf(csv(`${listTemplate()}${row}\r\n`, null))[0]?.serial).toBe("A1");
  });
});

describe("a list as XLSX", () => {
  it("is read as typed, from the first sheet that can be seen", () => {
    const read = sheet(
      [
        ["Serial", "Loop ohm", "Wire mm"],
        ["=1+1", 12.300000000000001, { xml: '<c r="@" s="2"><v>0.5</v></c>' }],
        [{ xml: '<c r="@" t="s"><v>0</v></c>' }, "7.25", ""],
        [{ xml: "<c><v>4711</v></c>" }],
      ],
      { strings: ["B & 2"] },
    );
    expect(sensorsOf(read).map(({ serial, loopResistanceOhm }) => [serial, loopResistanceOhm])).toEqual([
      ["=1+1", 12.3],
      ["B & 2", 7.25],
      ["4711", null],
    ]);
    expect(sensorsOf(read)[0]?.build).toEqual({ wireMillimetre: 0.5 });
  });

  it.each([
    ['<c r="@"><f>1+1</f><v>2</v></c>', "This cell holds a formula"],
    ['<c r="@" s="1"><v>45000</v></c>', "made a date of this"],
    ['<c r="@" s="3"><v>45000</v></c>', "made a date of this"],
    ['<c r="@" t="e"><v>#REF!</v></c>', "shows an error"],
    ['<c r="@"><v>12345678901234567890</v></c>', "rounded this long number"],
    ['<c r="@" t="s"><v>99</v></c>', "missing from the file"],
    ['<c r="@"><v>abc</v></c>', "cannot be read"],
  ])("refuses a cell it cannot take as typed: %s", (xml, said) => {
    expect(problemsOf(sheet([["serial", "note"], ["A", "x"], [{ xml }]]))[0]).toMatch(
      new RegExp(`^Row 3, column serial: .*${said}`),
    );
  });

  it("is refused before it is unpacked where it would burst, and where it is none", () => {
    const bomb = zipSync({ "xl/worksheets/sheet1.xml": new Uint8Array(12_000_000) });
    expect(bomb.length).toBeLessThan(100_000);
    expect(problemsOf(readSensorFile(bomb, lines, 1))[0]).toContain("unpacked it would have more than 8 MB");
    const many = zipSync(
      Object.fromEntries(
        Array.from({ length: 400 }, (_, at) => [`xl/worksheets/s${at}.xml`, new Uint8Array(1)]),
      ),
    );
    expect(problemsOf(readSensorFile(many, lines, 1))[0]).toContain("more than 300 parts");
    expect(problemsOf(readSensorFile(zipSync({ "a.txt": strToU8("x") }), lines, 1))[0]).toContain(
      "cannot be read",
    );
    expect(problemsOf(readSensorFile(workbook([["serial"], ["A"]]).slice(0, 300), lines, 1))[0]).toContain(
      "damaged or protected",
    );
  });

  it("that lies about its size is never unpacked beyond what it said", () => {
    const honest = Buffer.from(zipSync({ "xl/worksheets/sheet1.xml": new Uint8Array(5_000_000) }));
    // The size before packing stands in the central directory, 24 bytes after its signature, and in the local header.
    const central = honest.indexOf(Buffer.from([0x50, 0x4b, 0x01, 0x02]));
    honest.writeUInt32LE(10, central + 24);
    honest.writeUInt32LE(10, 22);
    expect(readSensorFile(Uint8Array.from(honest), lines, 1).ok).toBe(false);
  });

  it("with a document type, entities or a foreign relation is refused, and nothing is fetched", () => {
    const hostile =
      '<?xml version="1.0"?><!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd">]><worksheet><sheetData><row r="1"><c t="inlineStr"><is><t>&e;</t></is></c></row></sheetData></worksheet>';
    const read = readSensorFile(
      workbook([["serial"]], { parts: { "xl/worksheets/sheet7.xml": strToU8(hostile) } }),
      lines,
      1,
    );
    expect(problemsOf(read)[0]).toContain("cannot be read");
  });
});
