import { describe, expect, it } from "vitest";
import { assessWindow } from "@/lib/metrology/stability/assess-window";
import { findDwell } from "@/lib/metrology/stability/find-dwell";
import { proposeWindow } from "@/lib/metrology/stability/propose-window";
import { runningSums } from "@/lib/metrology/stability/running-sums";
import type { ReferenceSeries } from "@/lib/metrology/stability/stability-types";

const criterion = { minimumSeconds: 600, slopeTimesLengthCelsius: 0.1, agreementCelsius: 0.4 };

function series(furnace: (t: number) => number, end: number): ReferenceSeries {
  const seconds = Array.from({ length: end / 10 + 1 }, (_, i) => 10 * i);
  return { id: "A", seconds, celsius: seconds.map(furnace) };
}

describe("edges", () => {
  it("a reference without readings is never near the setpoint", () => {
    const empty = { id: "B", seconds: [], celsius: [] };
    expect(findDwell([series(() => 600, 900), empty], 600)).toBeNull();
  });

  it("a criterion without length has no window to propose, and says so", () => {
    const proposal = proposeWindow([series(() => 600, 900)], 600, { ...criterion, minimumSeconds: 0 });
    expect(proposal).toEqual({
      kind: "none",
      reason:
        "The furnace never came to rest at 600 °C. In the last 0.0 min: the window ends before it begins",
    });
  });

  it("running sums give no line through less than two times", () => {
    const sums = runningSums({ id: "A", seconds: [0, 5, 5], celsius: [1, 2, 3] }, 0);
    expect(sums.line(0, 4)).toBeNull();
    expect(sums.line(5, 6)).toBeNull();
    expect(sums.line(0, 6)?.readings).toBe(3);
  });

  it("names a spread beyond its limit", () => {
    const window = assessWindow([series((t) => 600 + 0.3 * ((t / 10) % 2), 900)], 0, 900, {
      ...criterion,
      spreadCelsius: 0.2,
    });
    expect(window.ok && window.value.reasons).toEqual([
      "The readings of one reference spread over 0.300 °C; at most 0.2 °C is allowed.",
    ]);
  });
});
