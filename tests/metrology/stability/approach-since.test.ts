import { describe, expect, it } from "vitest";
import { approachSince } from "@/lib/metrology/stability/approach-since";

const of = (...celsius: number[]) => ({ id: "A", seconds: celsius.map((_, i) => 10 * i), celsius });

describe("approachSince", () => {
  it("is the latest time since which all stand within 5 °C", () => {
    expect(approachSince([of(590, 595, 605, 600)], 600)).toBe(10);
    expect(approachSince([of(590, 595, 605, 600), of(500, 550, 598, 600)], 600)).toBe(20);
    expect(approachSince([of(600, 590, 600, 600)], 600)).toBe(20);
    expect(approachSince([of(600, 600)], 600)).toBe(0);
  });

  it("is none away from the setpoint, without readings, or without a reference", () => {
    expect(approachSince([of(600, 606)], 600)).toBeNull();
    expect(approachSince([of(600, Number.NaN)], 600)).toBeNull();
    expect(approachSince([of(600, 600), of()], 600)).toBeNull();
    expect(approachSince([], 600)).toBeNull();
  });
});
