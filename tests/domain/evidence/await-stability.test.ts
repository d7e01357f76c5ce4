import { describe, expect, it } from "vitest";
import { awaitStability } from "@/lib/domain/evidence/await-stability";

const criterion = { minimumSeconds: 600, slopeTimesLengthCelsius: 0.1, agreementCelsius: 0.4 };

/** Invented: two references read every ten seconds, arriving at 600 °C at 0 s. */
const references = (end: number, apart: number, celsius: (t: number) => number) =>
  [0, apart].map((offset, k) => {
    const seconds = Array.from({ length: end / 10 + 1 }, (_, i) => 10 * i);
    return { id: `R${k + 1}`, seconds, celsius: seconds.map((t) => celsius(t) + offset) };
  });
const settling = (t: number): number => 600 - 4 * Math.exp(-t / 700);

describe("awaitStability", () => {
  it("says what is missing, and when it will be there", () => {
    const wait = awaitStability(references(1400, 0.1, settling), 600, criterion);
    expect(wait?.latest.reasons).toHaveLength(1);
    expect(wait?.latest.reasons[0]).toMatch(/^The references drift by 0\.\d+ °C over the window/);
    if (wait?.forecast.kind !== "expected") throw new Error("no time was said");
    const { fromSeconds, medianSeconds, toSeconds } = wait.forecast.time;
    // 4·e^(−t/700)·(slope of a 600 s window, 1.3) falls to 0.1 °C at about 2 730 s.
    expect(fromSeconds).toBeGreaterThan(1400);
    expect(Math.abs(medianSeconds - 2730)).toBeLessThan(100);
    expect(toSeconds).toBeLessThan(3400);
  });

  it("says that it is too early, with the reason", () => {
    const wait = awaitStability(references(200, 0.1, settling), 600, criterion);
    expect(wait?.latest.reasons[0]).toMatch(/3\.3 min long; at least 10\.0 min/);
    expect(wait?.forecast).toMatchObject({
      kind: "unknown",
      reason: expect.stringContaining("too early to say"),
    });
  });

  it("does not promise that waiting brings the references together", () => {
    const wait = awaitStability(
      references(1400, 0.9, () => 600),
      600,
      criterion,
    );
    expect(wait?.latest.reasons[0]).toMatch(/^The references differ by 0.900 °C/);
    expect(wait?.forecast).toEqual({ kind: "not-by-waiting" });
  });

  it("is silent away from the setpoint, or before a second reading", () => {
    expect(awaitStability(references(1400, 0.1, settling), 700, criterion)).toBeNull();
    expect(awaitStability(references(0, 0.1, settling), 600, criterion)).toBeNull();
    expect(awaitStability([], 600, criterion)).toBeNull();
  });
});
