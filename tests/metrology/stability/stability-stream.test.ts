import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createStream, uniform } from "@/lib/metrology/number/random";
import { assessWindow } from "@/lib/metrology/stability/assess-window";
import { slidingStretch } from "@/lib/metrology/stability/sliding-stretch";
import { type StabilityScan, stabilityStream } from "@/lib/metrology/stability/stability-stream";
import { problemOf, resultOf } from "../result-of";

const criterion = {
  minimumSeconds: 600,
  slopeTimesLengthCelsius: 0.1,
  agreementCelsius: 0.4,
  spreadCelsius: 0.5,
};

/** Scans of two references at uneven times, settling at 900 °C. */
function scans(seed: number, count: number, step: number): StabilityScan[] {
  const stream = createStream(seed);
  let t = 10000 * uniform(stream);
  return Array.from({ length: count }, (_, i) => {
    t += step * (0.5 + uniform(stream));
    const at = (k: number): number =>
      900 + 0.1 * k - 5 * Math.exp((-i * step) / 500) + 0.1 * (uniform(stream) - 0.5);
    return [
      { seconds: t, celsius: at(0) },
      { seconds: t + 0.3 * step, celsius: at(1) },
    ];
  });
}

describe("stabilityStream", () => {
  it("finds after each scan what assessing the same window from scratch finds, to 1e-9 °C", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 5, max: 60 }), (seed, step) => {
        const stream = stabilityStream(["A", "B"], criterion);
        const list = scans(seed, 200, step);
        let met = 0;
        expect(problemOf(stream.push(list[0] as StabilityScan))).toBe("too-few");
        list.slice(1).forEach((scan, before) => {
          const i = before + 1;
          const live = stream.push(scan);
          const window = resultOf(live);
          const series = ["A", "B"].map((id, k) => {
            const own = list.slice(0, i + 1).map((one) => one[k] as StabilityScan[number]);
            return { id, seconds: own.map((r) => r.seconds), celsius: own.map((r) => r.celsius) };
          });
          const fresh = resultOf(assessWindow(series, window.fromSeconds, window.toSeconds, criterion));
          expect(Math.abs(window.slopeTimesLengthCelsius - fresh.slopeTimesLengthCelsius)).toBeLessThan(1e-9);
          expect(Math.abs(window.meanCelsius - fresh.meanCelsius)).toBeLessThan(1e-9);
          expect(window.spreadCelsius).toBe(fresh.spreadCelsius);
          expect(window.references.map((r) => r.readings)).toEqual(fresh.references.map((r) => r.readings));
          const isOnLimit = Math.abs(fresh.slopeTimesLengthCelsius - 0.1) < 1e-9;
          if (!isOnLimit) expect([window.meets, window.reasons]).toEqual([fresh.meets, fresh.reasons]);
          if (window.meets) met += 1;
        });
        if (step > 30) expect(met).toBeGreaterThan(0);
      }),
      { numRuns: 12 },
    );
  });

  it("does the same work for a scan however long the stream and the window are", () => {
    const perScan = (count: number, minimumSeconds: number): number => {
      const stream = stabilityStream(["A", "B"], { ...criterion, minimumSeconds });
      for (const scan of scans(7, count, 1)) stream.push(scan);
      return stream.joins() / count;
    };
    // Three for each reference: arriving, turned over, asked for.
    const work = [perScan(2000, 60), perScan(20000, 60), perScan(20000, 600), perScan(20000, 6000)];
    for (const one of work) expect(one).toBeLessThanOrEqual(6);
    expect(Math.max(...work) / Math.min(...work)).toBeLessThan(1.5);
  });

  it("recovers when a reading without a number has left the window", () => {
    const stream = stabilityStream(["A"], criterion);
    const kinds = Array.from({ length: 140 }, (_, i) => {
      const said = stream.push([{ seconds: 10 * i, celsius: i === 20 ? Number.NaN : 900 }]);
      return said.ok ? "found" : said.problem.kind;
    });
    expect(kinds.slice(1, 20).every((kind) => kind === "found")).toBe(true);
    expect(kinds.slice(20, 80).every((kind) => kind === "not-finite")).toBe(true);
    expect(kinds.slice(82).every((kind) => kind === "found")).toBe(true);
  });

  it("refuses by name, and takes nothing of what it refuses", () => {
    const stream = stabilityStream(["A", "B"], criterion);
    const scan = (a: number, b: number) => [
      { seconds: a, celsius: 900 },
      { seconds: b, celsius: 900 },
    ];
    expect(problemOf(stream.push(scan(0, 1)))).toBe("too-few");
    expect(problemOf(stream.push([{ seconds: 5, celsius: 1 }]))).toBe("not-applicable");
    expect(problemOf(stream.push(scan(10, 1)))).toBe("outside-range");
    expect(problemOf(stream.push(scan(Number.NaN, 11)))).toBe("outside-range");
    expect(resultOf(stream.push(scan(10, 11))).references.map((r) => r.readings)).toEqual([2, 2]);
    expect(problemOf(stabilityStream([], criterion).push([]))).toBe("not-applicable");
    // One of them has stood still for longer than the window.
    expect(problemOf(stream.push(scan(9000, 12)))).toBe("too-few");
  });
});

describe("slidingStretch", () => {
  it("answers before anything was dropped, and empty", () => {
    const held = slidingStretch();
    expect(held.stretch()).toBeNull();
    held.push(0, 1);
    held.push(10, 3);
    expect(held.stretch()).toMatchObject({ count: 2, meanSeconds: 5, meanCelsius: 2, lowest: 1, highest: 3 });
  });
});
