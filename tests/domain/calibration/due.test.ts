import { describe, expect, it } from "vitest";
import { dueState } from "@/lib/domain/calibration/due";
import { calibrationInForce } from "@/lib/domain/calibration/in-force";

describe("dueState", () => {
  it.each([
    [null, "none"],
    ["2026-03-03", "out-of-date"],
    ["2026-03-04", "due"],
    ["2026-04-03", "due"],
    ["2026-04-04", "in-date"],
  ])("due %s, seen on 2026-03-04, is %s", (dueOn, state) => {
    expect(dueState(dueOn, "2026-03-04")).toBe(state);
  });
});

describe("calibrationInForce", () => {
  const old = { name: "old", performedOn: "2024-05-01" };
  const late = { name: "late", performedOn: "2025-05-01" };

  it("takes the last one performed on or before the day, in whatever order they come", () => {
    expect(calibrationInForce([late, old], "2025-04-30")).toBe(old);
    expect(calibrationInForce([old, late], "2025-05-01")).toBe(late);
    expect(calibrationInForce([late, old], "2024-04-30")).toBeNull();
  });

  it("takes the one recorded later when two were performed on one day", () => {
    const again = { name: "again", performedOn: "2025-05-01" };
    expect(calibrationInForce([old, late, again], "2026-01-01")).toBe(again);
  });
});
