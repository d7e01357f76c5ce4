import { describe, expect, test } from "vitest";
import { readSurveyCsv, surveyHeader } from "@/lib/files/survey-csv";

const read = (text: string | Uint8Array, kind: Parameters<typeof readSurveyCsv>[1] = "axial") =>
  readSurveyCsv(typeof text === "string" ? new TextEncoder().encode(text) : text, kind);
const problem = (text: string | Uint8Array, kind?: Parameters<typeof readSurveyCsv>[1]) => {
  const found = read(text, kind);
  if (found.ok) throw new Error("the file was read, though it should have been refused");
  return found.problem;
};

const axial = "position_mm,probe_uV,monitor_uV\n370,9587.1,9583\n400,9588,9583.2\n";

describe("a survey's file is read", () => {
  test("with its unit from the names of its columns", () => {
    expect(read(axial)).toEqual({
      ok: true,
      unit: "microvolt",
      rows: [
        { millimetre: 370, probe: 9587.1, monitor: 9583, minutes: null },
        { millimetre: 400, probe: 9588, monitor: 9583.2, minutes: null },
      ],
    });
    expect(read("minutes;monitor_C\n0;1000,25\n1;1000,3\n", "stability")).toEqual({
      ok: true,
      unit: "celsius",
      rows: [
        { minutes: 0, value: 1000.25 },
        { minutes: 1, value: 1000.3 },
      ],
    });
    expect(read("probe_µV,depth_mm,monitor_µV,minutes\n1,2,3,\n", "immersion")).toMatchObject({
      ok: true,
      rows: [{ millimetre: 2, probe: 1, monitor: 3, minutes: null }],
    });
    expect(read('arrangement,place,sensor,reading_uV\n1,"bore 1",TC-1,9587\n', "positions")).toMatchObject({
      ok: true,
      rows: [{ arrangement: 1, place: "bore 1", sensor: "TC-1", value: 9587 }],
    });
  });

  test("by the header that is offered", () => {
    expect(surveyHeader("positions")).toBe("arrangement,place,sensor,reading_uV");
    expect(surveyHeader("axial")).toBe("position_mm,probe_uV,monitor_uV,minutes");
  });
});

describe("a survey's file is refused, with line, column and remedy", () => {
  test.each([
    ["", 1, null, "empty"],
    ["position_mm,probe_uV\n1,2\n", 1, "monitor_uV or monitor_C", "missing"],
    ["position_mm,probe_uV,monitor_uV,note\n", 1, "note", "not known"],
    ["position_mm,depth_mm,probe_uV,monitor_uV\n", 1, "depth_mm", "twice"],
    ["position_mm,probe_uV,monitor_C\n1,2,3\n", 1, null, "one unit"],
    ["position_mm,probe_uV,monitor_uV\n", null, null, "no line"],
    ["position_mm,probe_uV,monitor_uV\n1,2\n", 2, null, "2 cells"],
    ['position_mm,probe_uV,monitor_uV\n1,2,"3\n', 2, null, "no cells"],
    ['"position_mm,probe_uV,monitor_uV\n', 1, null, "quotation mark"],
    ["position_mm,probe_uV,monitor_uV\n1,2,3\n1,,3\n", 3, "probe_uv", "empty"],
    ["position_mm,probe_uV,monitor_uV\n1,9.5x,3\n", 2, "probe_uv", "not a number"],
  ])("%j", (text, line, column, words) => {
    const found = problem(text);
    expect([found.line, found.column]).toEqual([line, column]);
    expect(found.message).toContain(words);
  });

  test("as too large, as no text, as one endless line", () => {
    expect(problem(new Uint8Array(4_000_001)).message).toContain("4 MB");
    expect(problem(new Uint8Array([0x50, 0x4b, 0x03, 0x04])).message).toContain("spreadsheet");
    expect(problem("x".repeat(100_001)).message).toContain("100 000");
    const many = `minutes,monitor_uV\n${"1,2\n".repeat(5001)}`;
    expect(problem(many, "stability").message).toContain("5000");
  });
});
