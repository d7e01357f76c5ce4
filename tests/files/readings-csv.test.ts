import { describe, expect, test } from "vitest";
import { readingsLimitBytes } from "@/lib/domain/run/readings-limit";
import { readReadingsCsv } from "@/lib/files/readings-csv";
import { describeProblem } from "@/lib/files/readings-problem";

const load = ["101", "102"];
const utf8 = (text: string) => new TextEncoder().encode(text);
const read = (source: string | Uint8Array, channels: readonly string[] = load) =>
  readReadingsCsv(typeof source === "string" ? utf8(source) : source, channels);
const file = (source: string | Uint8Array, channels?: readonly string[]) => {
  const outcome = read(source, channels);
  if (!outcome.ok) throw new Error(describeProblem(outcome.problem));
  return outcome.file;
};
const problem = (source: string | Uint8Array, channels?: readonly string[]) => {
  const outcome = read(source, channels);
  if (outcome.ok) throw new Error("the file was read, though it should have been refused");
  return outcome.problem;
};
const channel = (source: string | Uint8Array, name: string) => {
  const found = file(source).channels.find((one) => one.channel === name);
  if (!found) throw new Error(`no channel ${name}`);
  return { times: [...found.times], microvolts: [...found.microvolts], polarity: [...found.polarity] };
};

const long = "time_s,channel,emf_uV\n0,101,10500\n1,102,36245\n10,101,10503\n11,102,36248\n";
const wide = "time_s,101 [uV],102 [uV]\n0,10500,36245\n10,10503,36248\n";
const utf16 = (text: string, order: "le" | "be", mark: boolean) => {
  const bytes = Buffer.from(`${mark ? "\ufeff" : ""}${text}`, "utf16le");
  return new Uint8Array(order === "be" ? bytes.swap16() : bytes);
};

describe("a readings file is read", () => {
  test("in the long shape, each reading with its own time", () => {
    expect(channel(long, "101")).toEqual({ times: [0, 10], microvolts: [10500, 10503], polarity: [1, 1] });
    expect(channel(long, "102")).toEqual({ times: [1, 11], microvolts: [36245, 36248], polarity: [1, 1] });
    expect(file(long).readingCount).toBe(4);
    expect(file(long).findings).toEqual([]);
  });

  test("in the wide shape", () => {
    expect(channel(wide, "102")).toEqual({ times: [0, 10], microvolts: [36245, 36248], polarity: [1, 1] });
  });

  test("with polarity, in both shapes", () => {
    expect(
      channel(
        "time_s,channel,emf_uV,polarity\n0,101,10500,+\n1,101,-10503,-\n2,101,-1,−\n3,101,1,+1\n",
        "101",
      ).polarity,
    ).toEqual([1, -1, -1, 1]);
    expect(channel("time_s,polarity,101 [uV]\n0,+,10\n1,-1,-10\n", "101").polarity).toEqual([1, -1]);
  });

  test.each(["uV", "µV", "μV", "UV"])("in %s, both code points of µ", (unit) => {
    expect(channel(`time_s,101 [${unit}]\n0,10500\n`, "101").microvolts).toEqual([10500]);
  });

  test("in mV and V, with the decimal point moved in the text, not by multiplication", () => {
    // Multiplied, the binary numbers give other bits.
    expect(0.0000001 * 1e6).not.toBe(0.1);
    expect(channel("time_s,channel,emf_V\n0,101,0.0000001\n1,101,-3e-4\n", "101").microvolts).toEqual([
      0.1, -300,
    ]);
    expect(1.001 * 1000).not.toBe(1001);
    expect(channel("time_s,101 [mV]\n0,1.001\n1,36.2450001\n", "101").microvolts).toEqual([1001, 36245.0001]);
  });

  test("with decimal commas between semicolons", () => {
    expect(channel("time_s;channel;emf_mV\n0,5;101;10,503\n1,5;101;-0,001\n", "101")).toEqual({
      times: [0.5, 1.5],
      microvolts: [10503, -1],
      polarity: [1, 1],
    });
  });

  test("with semicolons or tabs and decimal points", () => {
    expect(channel("time_s;101 [uV]\n0;10500.25\n", "101").microvolts).toEqual([10500.25]);
    expect(channel("time_s\t101 [uV]\n0\t10500.25\n", "101").microvolts).toEqual([10500.25]);
  });

  test("with a byte-order mark, CRLF, CR alone, no last line end, blank lines and # remarks", () => {
    const plain = channel(long, "102");
    expect(channel(`\ufeff${long}`, "102")).toEqual(plain);
    expect(channel(long.replaceAll("\n", "\r\n"), "102")).toEqual(plain);
    expect(channel(long.replaceAll("\n", "\r"), "102")).toEqual(plain);
    expect(channel(long.trimEnd(), "102")).toEqual(plain);
    expect(channel(`# scanner 3\n${long.replace("\n", "\n\n")}\n\n`, "102")).toEqual(plain);
  });

  test("in UTF-16 with its mark, either byte order", () => {
    expect(channel(utf16(long, "le", true), "102")).toEqual(channel(long, "102"));
    expect(channel(utf16(long, "be", true), "102")).toEqual(channel(long, "102"));
  });

  test("with µ as one byte, as Windows instruments write it", () => {
    const bytes = Buffer.from("time_s,101 [µV]\n0,10500\n", "latin1");
    expect(channel(new Uint8Array(bytes), "101").microvolts).toEqual([10500]);
  });

  test("with fields in double quotes", () => {
    expect(channel('"time_s","channel","emf_uV"\n"0","101","10500"\n', "101").microvolts).toEqual([10500]);
  });

  test("with moments: exact microseconds, the zone taken into account", () => {
    const source =
      "time,channel,emf_uV\n2026-03-02T09:30:00.000001+01:00,101,1\n2026-03-02T08:30:10Z,101,2\n2026-03-02 10:00:20+0130,101,3\n";
    expect(file(source).clock).toBe("microseconds-since-1970");
    const base = Date.UTC(2026, 2, 2, 8, 30) * 1000;
    expect(channel(source, "101").times).toEqual([base + 1, base + 10_000_000, base + 20_000_000]);
  });

  test("with a gap, which is shown", () => {
    const source = `time_s,101 [uV],102 [uV]\n${[0, 10, 20, 30, 131, 141].map((t) => `${t},1,2`).join("\n")}\n`;
    expect(file(source).findings).toEqual([
      "Channel 101 has a gap of 101.0 s at 30 s; its usual interval is 10.0 s.",
      "Channel 102 has a gap of 101.0 s at 30 s; its usual interval is 10.0 s.",
    ]);
    expect(file(source.replace("131", "130")).findings).toEqual([]);
  });

  test("with an absent channel and an open circuit, which are shown", () => {
    expect(file("time_s,101 [uV]\n0,9.9E37\n").findings).toEqual([
      expect.stringContaining("Channel 101 shows 1 readings of 1 V or more"),
      "The file has no reading of channel 102.",
    ]);
  });
});

describe("a readings file is refused, with line, column and remedy", () => {
  const cases: readonly [string, string | Uint8Array, number | null, string | null, RegExp][] = [
    ["no bytes", "", 1, null, /empty.*Upload/],
    ["blanks only", " \n\r\n ", 1, null, /empty/],
    ["a header only", "time_s,101 [uV]\n", null, null, /no readings/],
    ["no time column", "when,channel,emf_uV\n0,101,1\n", 1, null, /no time column.*time_s/],
    ["two time columns", "time_s,time,channel,emf_uV\n0,0,101,1\n", 1, "time", /two time columns/],
    ["no emf column", "time_s,channel\n0,101\n", 1, null, /no emf column/],
    ["no reading column", "time_s\n0\n", 1, null, /no column with readings/],
    ["an unknown column", "time_s,channel,emf_uV,comment\n0,101,1,x\n", 1, "comment", /not known. Remove/],
    ["an unknown wide column", "time_s,101 [uV],furnace\n0,1,2\n", 1, "furnace", /not known/],
    ["a column twice", "time_s,101 [uV],101 [uV]\n0,1,2\n", 1, "101 [uV]", /twice/],
    ["a channel in two units", "time_s,101 [uV],101 [mV]\n0,1,2\n", 1, "101 [mV]", /two columns/],
    ["a column without a name", "time_s,101 [uV],\n0,1,\n", 1, "3", /no name/],
    ["a channel without its unit", "time_s,101\n0,1\n", 1, "101", /no unit.*101 \[uV\]/],
    [
      "degrees Celsius",
      "time_s,101 [°C]\n0,1000.4\n",
      1,
      "101 [°C]",
      /temperatures.*export the measured emf/,
    ],
    ["kelvin", "time_s,channel,emf_K\n0,101,1273\n", 1, "emf_K", /temperatures/],
    [
      "a temperature column",
      "time_s,channel,temperature_C\n0,101,1000\n",
      1,
      "temperature_C",
      /temperatures/,
    ],
    ["another unit", "time_s,101 [ohm]\n0,1\n", 1, "101 [ohm]", /"ohm".*not known.*uV, mV or V/],
    ["a wide channel not in the load", "time_s,109 [uV]\n0,1\n", 1, "109 [uV]", /"109" is not in.*101, 102/],
    [
      "a long channel not in the load",
      "time_s,channel,emf_uV\n0,101,1\n1,109,1\n",
      3,
      "channel",
      /"109" is not in/,
    ],
    ["NaN", "time_s,101 [uV]\n0,1\n1,NaN\n", 3, "101 [uV]", /"NaN" is not a number/],
    ["infinity", "time_s,101 [uV]\n0,Infinity\n", 2, "101 [uV]", /not a number/],
    ["text", "time_s,101 [uV]\n0,OPEN\n", 2, "101 [uV]", /"OPEN" is not a number/],
    ["a hexadecimal", "time_s,101 [uV]\n0,0x10\n", 2, "101 [uV]", /not a number/],
    ["a number no float holds", "time_s,101 [uV]\n0,1e309\n", 2, "101 [uV]", /too large/],
    ["nothing in a number", "time_s,101 [uV],102 [uV]\n0,1,\n", 2, "102 [uV]", /field is empty/],
    ["nothing in a time", "time_s,101 [uV]\n,1\n", 2, "time_s", /field is empty/],
    [
      "decimal commas between commas",
      "time_s,101 [uV]\n0,10500,5\n",
      2,
      null,
      /3 fields where the header has 2.*semicolons/,
    ],
    ["a line cut off", "time_s,101 [uV],102 [uV]\n0,1,2\n10,10", 3, null, /2 fields.*cut off/],
    ["both marks in one number", "time_s;101 [uV]\n0;10,503.5\n", 2, "101 [uV]", /both a comma and a point/],
    [
      "both marks in one file",
      "time_s;101 [uV]\n0.5;1,5\n",
      2,
      "101 [uV]",
      /decimal comma, line 2 a decimal point/,
    ],
    ["a comma that may be grouping", "time_s;101 [uV]\n0;10,503\n", 2, "101 [uV]", /10\.503 or 10503/],
    ["times that repeat", "time_s,channel,emf_uV\n0,101,1\n0,102,1\n0,101,2\n", 4, "time_s", /101 repeats/],
    ["times that go back", "time_s,101 [uV]\n10,1\n9.99,2\n", 3, "time_s", /goes back.*sort the file/],
    ["a moment without its zone", "time,101 [uV]\n2026-03-02T09:30:00,1\n", 2, "time", /time zone/],
    ["a moment that is none", "time,101 [uV]\n2026-02-30T09:30:00Z,1\n", 2, "time", /not a time/],
    [
      "a moment too fine",
      "time,101 [uV]\n2026-03-02T09:30:00.1234567Z,1\n",
      2,
      "time",
      /finer than a microsecond/,
    ],
    [
      "a polarity that is none",
      "time_s,channel,emf_uV,polarity\n0,101,1,up\n",
      2,
      "polarity",
      /"up" is not a polarity/,
    ],
    [
      "a polarity named like a property",
      "time_s,channel,emf_uV,polarity\n0,101,1,constructor\n",
      2,
      "polarity",
      /not a polarity/,
    ],
    ["a quotation mark left open", 'time_s,101 [uV]\n0,"1\n', 2, null, /quotation mark/],
    ["a spreadsheet", new Uint8Array([0x50, 0x4b, 3, 4, 1, 2]), 1, null, /spreadsheet.*CSV/],
    ["binary", new Uint8Array([1, 2, 3, 0, 255, 7]), 1, null, /binary/],
    ["UTF-16 without its mark", utf16(long, "le", false), 1, null, /UTF-16.*UTF-8/],
    ["one endless line", "x".repeat(200_000), 1, null, /100 000 characters/],
  ];
  test.each(cases)("%s", (_, source, line, column, message) => {
    const found = problem(source);
    expect({ line: found.line, column: found.column }).toEqual({ line, column });
    expect(found.message).toMatch(message);
  });

  test("a comma is the decimal mark when any number of the file decides it", () => {
    expect(channel("time_s;101 [uV]\n0;10,503\n10;36245,12\n", "101").microvolts).toEqual([10.503, 36245.12]);
    expect(channel("time_s;101 [uV]\n0,5;10,503\n", "101").microvolts).toEqual([10.503]);
  });

  test("more than 64 MB", () => {
    expect(problem(new Uint8Array(readingsLimitBytes + 1)).message).toMatch(/64 MB.*Split/);
  });

  test("the place is said in words", () => {
    expect(describeProblem(problem("time_s,101 [uV]\n0,1\n1,NaN\n"))).toMatch(
      /^Line 3, column 101 \[uV\]: "NaN"/,
    );
  });
});

test("a file of almost 64 MB is read, every reading of it", () => {
  const scan = "102,123456.789012,-12345.678901\n";
  const head = "time_s,101 [uV],102 [uV]\n";
  const scans = Math.floor((readingsLimitBytes - head.length) / (scan.length + 8));
  const parts = [head];
  for (let index = 0; index < scans; index += 1) parts.push(`${index},123456.789012,-12345.678901\n`);
  const bytes = utf8(parts.join(""));
  expect(bytes.length).toBeGreaterThan(48 * 1024 * 1024);
  expect(bytes.length).toBeLessThanOrEqual(readingsLimitBytes);
  const { readingCount, channels } = file(bytes);
  expect(readingCount).toBe(2 * scans);
  expect(channels[1]?.microvolts.at(-1)).toBe(-12345.678901);
});
