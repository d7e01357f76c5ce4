import { describe, expect, it } from "vitest";
import { assessWindow } from "@/lib/metrology/stability/assess-window";
import { firstAfter, firstAtOrAfter } from "@/lib/metrology/stability/bounds";
import { findDwell } from "@/lib/metrology/stability/find-dwell";
import { proposeWindow } from "@/lib/metrology/stability/propose-window";
import { runningSums } from "@/lib/metrology/stability/running-sums";
import type { ReferenceSeries, WindowAssessment } from "@/lib/metrology/stability/stability-types";

const criterion = { minimumSeconds: 600, slopeTimesLengthCelsius: 0.1, agreementCelsius: 0.4 };

/** Read every ten seconds, the second reference five seconds later. */
function series(furnace: (t: number) => number, end: number, id = "A", delay = 0): ReferenceSeries {
  const seconds: number[] = [];
  for (let t = delay; t <= end; t += 10) seconds.push(t);
  return { id, seconds, celsius: seconds.map(furnace) };
}

function pair(furnace: (t: number) => number, end: number, apart = 0.1): ReferenceSeries[] {
  return [series(furnace, end), series((t) => furnace(t) + apart, end, "B", 5)];
}

function assessed(references: readonly ReferenceSeries[], from: number, to: number): WindowAssessment {
  const result = assessWindow(references, from, to, criterion);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}

/** Ramp of 5 °C/min to 600 °C, overshoot of 3 °C, settling with a time constant of 5 minutes, then a ramp. */
function run(t: number): number {
  const arrival = 3600;
  const departure = 7200;
  if (t < arrival) return 600 - ((arrival - t) * 5) / 60;
  if (t > departure) return 600 + ((t - departure) * 5) / 60;
  const since = (t - arrival) / 300;
  // 3·e·x·e^(−x): starts at 0, peaks at 3, dies away.
  return 600 + 3 * Math.E * since * Math.exp(-since);
}

describe("bounds", () => {
  it("include both ends", () => {
    const seconds = [0, 10, 20, 30];
    expect([firstAtOrAfter(seconds, 10), firstAfter(seconds, 20)]).toEqual([1, 3]);
    expect([firstAtOrAfter(seconds, 10.1), firstAfter(seconds, 19.9)]).toEqual([2, 2]);
    expect([firstAtOrAfter(seconds, -5), firstAfter(seconds, 99)]).toEqual([0, 4]);
    expect(firstAtOrAfter([], 3)).toBe(0);
  });
});

describe("assessWindow", () => {
  it("gives mean, slope, drift, spread and difference", () => {
    const window = assessed(
      pair((t) => 600 + 0.0001 * t, 2000),
      200,
      1000,
    );
    expect(window.lengthSeconds).toBe(800);
    expect(window.meanCelsius).toBeCloseTo(600.11, 9);
    expect(window.slopeCelsiusPerMinute).toBeCloseTo(0.006, 9);
    expect(window.slopeTimesLengthCelsius).toBeCloseTo(0.08, 9);
    expect(window.spreadCelsius).toBeCloseTo(0.08, 9);
    expect(window.differenceCelsius).toBeCloseTo(0.1, 9);
    expect(window.references.map(({ id, readings }) => [id, readings])).toEqual([
      ["A", 81],
      ["B", 80],
    ]);
    expect(window).toMatchObject({ meets: true, reasons: [] });
  });

  it("names each thing that fails, in one sentence each", () => {
    const window = assessed(
      pair((t) => 600 + 0.001 * t, 2000, 0.7),
      0,
      500,
    );
    expect(window.meets).toBe(false);
    expect(window.reasons).toEqual([
      "The window is 8.3 min long; at least 10.0 min are asked for.",
      "The references drift by 0.500 °C over the window; at most 0.1 °C is allowed.",
      "The references differ by 0.700 °C; U of their difference is 0.400 °C.",
    ]);
  });

  it("falls and rises alike", () => {
    const up = assessed(
      pair((t) => 600 + 0.0003 * t, 2000),
      0,
      1000,
    );
    const down = assessed(
      pair((t) => 600 - 0.0003 * t, 2000),
      0,
      1000,
    );
    expect(down.slopeTimesLengthCelsius).toBeCloseTo(up.slopeTimesLengthCelsius, 9);
    expect(down.slopeCelsiusPerMinute).toBeCloseTo(-up.slopeCelsiusPerMinute, 9);
  });

  it("compares nothing with one reference", () => {
    const window = assessed([series(() => 600, 2000)], 0, 700);
    expect(window).toMatchObject({ differenceCelsius: null, meets: true });
  });

  it("takes three readings of each reference as the least", () => {
    const sparse: ReferenceSeries = { id: "A", seconds: [0, 700], celsius: [600, 600] };
    expect(assessed([sparse], 0, 700).reasons).toEqual(["Reference A has only 2 readings in the window."]);
  });

  it.each([
    ["no reference", [], 0, 700],
    ["a reference without readings there", pair(() => 600, 2000), 5000, 6000],
    ["a window that ends before it begins", pair(() => 600, 2000), 700, 0],
    ["a reading that is not a number", pair((t) => (t === 300 ? Number.NaN : 600), 2000), 0, 700],
  ] as const)("has a problem with %s", (_name, references, from, to) => {
    expect(assessWindow(references, from, to, criterion).ok).toBe(false);
  });

  it("does not choke on a hundred thousand readings", () => {
    const window = assessed([series(() => 600, 1_000_000)], 0, 1_000_000);
    expect(window.references[0]?.readings).toBe(100_001);
  });
});

describe("findDwell", () => {
  it("is where the mean lies within 5 °C of the nominal, ramps left out", () => {
    const dwell = findDwell(pair(run, 9000), 600);
    // 5 °C/min: a minute before arrival lies within; the ramp that ends the dwell at 7200 s does not belong to it.
    expect(dwell?.fromSeconds).toBeGreaterThanOrEqual(3530);
    expect(dwell?.fromSeconds).toBeLessThanOrEqual(3560);
    expect(dwell?.toSeconds).toBeGreaterThanOrEqual(7170);
    expect(dwell?.toSeconds).toBeLessThanOrEqual(7200);
  });

  it("is the longest of several", () => {
    const twice = (t: number): number => (t < 500 || (t > 1000 && t < 3000) ? 600 : 650);
    expect(findDwell([series(twice, 4000)], 600)).toEqual({ fromSeconds: 1010, toSeconds: 2990 });
  });

  it("takes the last scan whole, though the other references are read later", () => {
    expect(
      findDwell(
        pair(() => 600, 1000),
        600,
      ),
    ).toEqual({ fromSeconds: 0, toSeconds: 1000 });
    expect(
      findDwell(
        pair((t) => (t < 500 ? 600 : 650), 1000),
        600,
      )?.toSeconds,
    ).toBe(495);
  });

  it("is not there when the furnace never was", () => {
    expect(findDwell(pair(run, 9000), 900)).toBeNull();
    expect(findDwell([], 600)).toBeNull();
  });
});

describe("runningSums", () => {
  it("give the line that a fit gives", () => {
    const reference = series((t) => run(t) + Math.sin(t / 7), 9000);
    const sums = runningSums(reference, 600);
    for (const [from, to] of [
      [3700, 4300],
      [0, 9000],
      [6000, 6605],
    ] as const) {
      const line = sums.line(from, to);
      const window = assessed([reference], from, to);
      expect((line?.slope ?? 0) * 60).toBeCloseTo(window.slopeCelsiusPerMinute, 9);
      expect(line?.at((from + to) / 2)).toBeCloseTo(window.meanCelsius, 8);
      expect(line?.readings).toBe(window.references[0]?.readings);
    }
  });

  it("have no line through fewer than two readings", () => {
    expect(runningSums(series(run, 100), 600).line(20, 25)).toBeNull();
  });
});

describe("proposeWindow", () => {
  it("proposes the settled end of the dwell, taken back while it stays at rest", () => {
    const proposal = proposeWindow(pair(run, 9000), 600, criterion);
    if (proposal.kind === "none") throw new Error(proposal.reason);
    const { window } = proposal;
    expect(window.meets).toBe(true);
    expect(window.lengthSeconds).toBeGreaterThanOrEqual(600);
    // After the overshoot of 3 °C at 3900 s has died away, before the furnace leaves at 7200 s.
    expect(window.fromSeconds).toBeGreaterThan(4800);
    expect(window.toSeconds).toBeLessThanOrEqual(7215);
    expect(window.toSeconds).toBeGreaterThan(7100);
    expect(Math.abs(window.meanCelsius - 600)).toBeLessThan(0.2);
  });

  it("cannot be taken back by one more reading", () => {
    const references = pair(run, 9000);
    const proposal = proposeWindow(references, 600, criterion);
    if (proposal.kind === "none") throw new Error(proposal.reason);
    const { fromSeconds, toSeconds } = proposal.window;
    expect(assessed(references, fromSeconds - 5, toSeconds).meets).toBe(false);
  });

  it("has the same numbers as the same window moved there by hand", () => {
    const references = pair(run, 9000);
    const proposal = proposeWindow(references, 600, criterion);
    if (proposal.kind === "none") throw new Error(proposal.reason);
    const { fromSeconds, toSeconds } = proposal.window;
    expect(assessed(references, fromSeconds, toSeconds)).toEqual(proposal.window);
  });

  it("finds rest in noise, for any start of the noise", () => {
    for (let seed = 1; seed <= 20; seed += 1) {
      let state = seed;
      const noise = (): number => {
        state = (state * 48271) % 2147483647;
        return (state / 2147483647 - 0.5) * 0.1;
      };
      const proposal = proposeWindow(
        pair((t) => run(t) + noise(), 9000),
        600,
        criterion,
      );
      expect(proposal.kind, `seed ${seed}`).toBe("proposed");
      if (proposal.kind === "proposed") expect(proposal.window.fromSeconds).toBeGreaterThan(4300);
    }
  });

  it("passes over a disturbance at the end of the dwell", () => {
    const disturbed = (t: number): number => (t > 3000 ? 600 + ((t - 3000) * 4) / 600 : 600);
    const proposal = proposeWindow(pair(disturbed, 3600), 600, criterion);
    if (proposal.kind === "none") throw new Error(proposal.reason);
    expect(proposal.window.toSeconds).toBeLessThan(3120);
    expect(proposal.window.fromSeconds).toBe(0);
  });

  it("gives up with the reason when the furnace never comes to rest", () => {
    const proposal = proposeWindow(
      pair((t) => 596 + t / 900, 6000),
      600,
      criterion,
    );
    expect(proposal).toMatchObject({ kind: "none" });
    if (proposal.kind === "none") expect(proposal.reason).toMatch(/never came to rest.*drift by/);
  });

  it("gives up when the references disagree, and says by how much", () => {
    const proposal = proposeWindow(
      pair(() => 600, 3000, 0.9),
      600,
      criterion,
    );
    if (proposal.kind === "none") expect(proposal.reason).toContain("differ by 0.900 °C");
    expect(proposal.kind).toBe("none");
  });

  it("gives up when the dwell was too short, and says how long it was", () => {
    const proposal = proposeWindow(
      pair(() => 600, 300),
      600,
      criterion,
    );
    expect(proposal).toEqual({
      kind: "none",
      reason: "The furnace stood within 5 °C of 600 °C for 5.0 min only; a window needs 10.0 min.",
    });
  });

  it("gives up when the nominal was never reached", () => {
    const proposal = proposeWindow(pair(run, 9000), 900, criterion);
    expect(proposal.kind === "none" && proposal.reason).toContain("never came within 5 °C of 900 °C");
  });

  it.each([
    ["no reference", []],
    ["a value that is not a number", pair((t) => (t === 300 ? Number.NaN : 600), 2000)],
    ["as many times as temperatures missing", [{ id: "A", seconds: [1, 2], celsius: [600] }]],
  ])("gives up with %s", (_name, references) => {
    expect(proposeWindow(references, 600, criterion).kind).toBe("none");
  });

  it("answers over a long run too, where work that grew with its square would not end", () => {
    const references = pair((t) => 600 + 0.00005 * (t % 20_000), 300_000);
    expect(proposeWindow(references, 600, criterion).kind).toBe("proposed");
  });
});
