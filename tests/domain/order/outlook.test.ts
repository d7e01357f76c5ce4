import { describe, expect, it } from "vitest";
import { type OpenWork, outlookOf } from "@/lib/domain/order/outlook";
import { dayAfter, isWorkingDay, weekOf, workingDaysBetween } from "@/lib/domain/order/working-days";

/** A Wednesday. */
const today = "2026-03-04";
const places = 10;

const work = (more: Partial<OpenWork> = {}): OpenWork => ({
  promisedOn: "2026-03-13",
  toCome: 0,
  toMeasure: 5,
  toLoad: 5,
  toIssue: 0,
  elsewhere: 0,
  overlaps: [],
  furnaceUntil: "2026-03-09",
  isWaiting: false,
  ...more,
});

const kind = (more: Partial<OpenWork>) => outlookOf(work(more), today, places).kind;

describe("the outlook of a promised order", () => {
  it("is late from the day after, and says what is left", () => {
    expect(kind({ promisedOn: "2026-03-04", toMeasure: 0 })).toBe("fine");
    expect(outlookOf(work({ promisedOn: "2026-03-03" }), today, places)).toEqual({
      kind: "late",
      reasons: ["5 sensors to measure"],
    });
    expect(outlookOf(work({ promisedOn: "2026-03-03", toMeasure: 0 }), today, places)).toEqual({
      kind: "late",
      reasons: ["not completed"],
    });
  });

  it("is at risk when more working days are needed than are left, weekends not counted", () => {
    // One load and the finishing: two working days, Thursday and Friday.
    expect(kind({ promisedOn: "2026-03-06", furnaceUntil: "2026-03-05" })).toBe("fine");
    expect(kind({ promisedOn: "2026-03-05", furnaceUntil: "2026-03-04" })).toBe("risk");
    // Eleven sensors are two loads: Friday is too soon, and so is Sunday; Monday is the third working day.
    const eleven = { toMeasure: 11, furnaceUntil: "2026-03-05" };
    expect(kind({ ...eleven, promisedOn: "2026-03-08" })).toBe("risk");
    expect(kind({ ...eleven, promisedOn: "2026-03-09" })).toBe("fine");
  });

  it("counts sensors that are still to come, and those that only lack a certificate", () => {
    expect(kind({ promisedOn: "2026-03-05", toMeasure: 0, toCome: 1, furnaceUntil: "2026-03-04" })).toBe(
      "risk",
    );
    expect(kind({ promisedOn: "2026-03-05", toMeasure: 0, toIssue: 4 })).toBe("fine");
    expect(kind({ promisedOn: "2026-03-04", toMeasure: 0, toIssue: 4 })).toBe("risk");
  });

  it("is at risk when the furnace is taken too late for the finishing", () => {
    expect(kind({ promisedOn: "2026-03-13", furnaceUntil: "2026-03-12" })).toBe("fine");
    expect(outlookOf(work({ promisedOn: "2026-03-13", furnaceUntil: "2026-03-13" }), today, places)).toEqual({
      kind: "risk",
      reasons: ["the furnace is taken for it until 2026-03-13"],
    });
    expect(kind({ promisedOn: "2026-03-13", furnaceUntil: "2026-03-20" })).toBe("risk");
  });

  it("is at risk when its furnace hours have passed and sensors are in no load, until they are", () => {
    const passed = { furnaceUntil: "2026-03-03" };
    expect(outlookOf(work(passed), today, places)).toEqual({
      kind: "risk",
      reasons: ["its furnace hours ended on 2026-03-03, 5 sensors not in a load: promise it anew"],
    });
    expect(kind({ ...passed, toLoad: 0 }), "in the furnace now").toBe("fine");
    expect(kind({ ...passed, toLoad: 0, toCome: 1 }), "one did not come").toBe("risk");
    expect(kind({ furnaceUntil: today }), "the day is not over").toBe("fine");
  });

  it("is at risk when something else is in the furnace during its hours", () => {
    expect(outlookOf(work({ overlaps: ["R-2026-0007", "CH-2026-0002"] }), today, places)).toEqual({
      kind: "risk",
      reasons: ["R-2026-0007, CH-2026-0002 in the furnace during the hours kept for it"],
    });
  });

  it("asks no furnace for what is measured elsewhere, and a day for its certificate", () => {
    const away = { toMeasure: 0, toLoad: 0, elsewhere: 2, furnaceUntil: null };
    expect(kind({ ...away, promisedOn: "2026-03-05" })).toBe("fine");
    expect(outlookOf(work({ ...away, promisedOn: today }), today, places)).toEqual({
      kind: "risk",
      reasons: ["0 working days left, 1 needed", "2 sensors measured elsewhere, without certificate"],
    });
  });

  it("is at risk when it is time and no furnace is taken", () => {
    expect(kind({ promisedOn: "2026-03-09", furnaceUntil: null })).toBe("risk");
    expect(kind({ promisedOn: "2026-03-10", furnaceUntil: null })).toBe("fine");
  });

  it("is at risk when the customer is waited for and no day is to spare", () => {
    const ready = { furnaceUntil: "2026-03-05", isWaiting: true };
    expect(kind({ ...ready, promisedOn: "2026-03-09" })).toBe("risk");
    expect(kind({ ...ready, promisedOn: "2026-03-10" })).toBe("fine");
    expect(kind({ ...ready, promisedOn: "2026-03-04", toMeasure: 0 })).toBe("fine");
  });
});

describe("working days", () => {
  it("are Monday to Friday", () => {
    expect(["2026-03-06", "2026-03-07", "2026-03-08", "2026-03-09"].map(isWorkingDay)).toEqual([
      true,
      false,
      false,
      true,
    ]);
    expect(dayAfter("2026-02-28", 1)).toBe("2026-03-01");
    expect(weekOf("2026-03-08")).toEqual({ from: "2026-03-02", to: "2026-03-08" });
  });

  it.each([
    ["2026-03-04", 0],
    ["2026-03-01", 0],
    ["2026-03-05", 1],
    ["2026-03-08", 2],
    ["2026-03-09", 3],
    ["2026-03-18", 10],
  ])("until %s are %i", (to, count) => {
    expect(workingDaysBetween(today, to)).toBe(count);
  });
});
