import { describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { buildEvidence, type Scene } from "./build-evidence";
import { evaluate, measure, measured } from "./measured";

describe("the comparison", () => {
  it("finds no error where there is none", () => {
    for (const point of measure({})) {
      expect(point.referenceCelsius).toBeCloseTo(600, 7);
      expect(point.errorCelsius).toBeCloseTo(0, 7);
    }
  });

  it.each([1.3, -0.8])(
    "finds an error of %d °C and gives it the sign of indication minus reference",
    (error) => {
      for (const point of measure({ errorCelsius: error })) {
        expect(point.errorCelsius).toBeCloseTo(error, 2);
        expect(Math.sign(point.deviationMicrovolt)).toBe(Math.sign(error));
        const sign = error > 0 ? "\u2212" : "";
        expect(point.printed.correctionCelsius.startsWith("\u2212")).toBe(sign !== "");
      }
    },
  );

  it("carries a furnace that is off the nominal over to it", () => {
    for (const point of measure({ furnace: () => 603.7, errorCelsius: 1 })) {
      expect(point.carriedCelsius).toBeCloseTo(-3.7, 6);
      expect(point.errorCelsius).toBeCloseTo(1, 1);
      expect(Math.abs(point.errorCelsius - 1)).toBeLessThan(0.02);
    }
  });

  it("cancels a drifting furnace, though references are read first and last", () => {
    for (const point of measure({ furnace: (t) => 599 + 0.002 * t })) {
      expect(Math.abs(point.errorCelsius)).toBeLessThan(2e-3);
    }
  });

  it("cancels it also when the references do not stand about the sensors in time", () => {
    const evidence = buildEvidence({ furnace: (t) => 599 + 0.002 * t });
    // The second reference away: the first is read before all sensors.
    const single = {
      ...evidence,
      references: evidence.references.slice(0, 1),
      load: evidence.load.slice(0, -1),
      scans: { ...evidence.scans, channels: evidence.scans.channels.slice(0, -1) },
    };
    for (const point of measured(single)) expect(Math.abs(point.errorCelsius)).toBeLessThan(2e-3);
  });

  it.each([0, 23.4, -2])("adds a junction at %d °C as emf, never as degrees", (junctionCelsius) => {
    for (const point of measure({ junctionCelsius, errorCelsius: 0 })) {
      expect(point.referenceCelsius).toBeCloseTo(600, 7);
      expect(point.errorCelsius).toBeCloseTo(0, 7);
    }
  });

  it("takes a parasitic emf out by reversing the leads", () => {
    const straight = measure({ parasiticMicrovolt: 4 });
    const reversed = measure({ parasiticMicrovolt: 4, isReversing: true });
    expect(Math.abs((straight[0]?.referenceCelsius ?? 0) - 600)).toBeGreaterThan(0.3);
    for (const point of reversed) {
      expect(point.referenceCelsius).toBeCloseTo(600, 6);
      expect(point.errorCelsius).toBeCloseTo(0, 6);
    }
  });

  it("adds the voltmeter's correction at the indication", () => {
    const evidence = buildEvidence({ sensors: ["K"] });
    const [plain] = measured(evidence);
    const corrections = [
      { microvolt: 0, correctionMicrovolt: 0 },
      { microvolt: 50_000, correctionMicrovolt: 10 },
    ];
    const [corrected] = measured({ ...evidence, voltmeter: { ...evidence.voltmeter, corrections } });
    // 24 905.5 µV of 50 000 takes half of 10 µV.
    expect((corrected?.indicatedMicrovolt ?? 0) - (plain?.indicatedMicrovolt ?? 0)).toBeCloseTo(4.98, 2);
  });

  it("corrects a reversed reading at its own, negative, indication", () => {
    const evidence = buildEvidence({ sensors: ["K"], isReversing: true });
    const corrections = [
      { microvolt: -50_000, correctionMicrovolt: -10 },
      { microvolt: 50_000, correctionMicrovolt: 10 },
    ];
    const [corrected] = measured({ ...evidence, voltmeter: { ...evidence.voltmeter, corrections } });
    expect((corrected?.indicatedMicrovolt ?? 0) - 24905.467).toBeCloseTo(4.98, 2);
  });

  it("solves the reference's deviation: a reference 4 µV above the table reads too high without it", () => {
    const evidence = buildEvidence({ sensors: ["N"] });
    const references = evidence.references.map((r) => ({
      ...r,
      correction: {
        kind: "points" as const,
        points: [
          { celsius: 250, deviationMicrovolt: 4 },
          { celsius: 1150, deviationMicrovolt: 4 },
        ],
      },
    }));
    const [point] = measured({ ...evidence, references });
    expect(point?.referenceCelsius).toBeCloseTo(600 - 4 / 10.2072, 3);
    expect(point?.references.map((r) => r.deviationMicrovolt)).toEqual([4, 4]);
  });

  it("is the same bits each time", () => {
    const evidence = buildEvidence({ errorCelsius: 0.7 });
    expect(JSON.stringify(evaluateEvidence(evidence))).toBe(
      JSON.stringify(evaluateEvidence(structuredClone(evidence))),
    );
  });
});

describe("conformity", () => {
  const state = (scene: Scene, change: Partial<EvidenceInput> = {}) =>
    measured({ ...buildEvidence(scene), ...change }).map(({ conformity }) => conformity);

  it("has each of its states", () => {
    const k = { sensors: ["K"] as const };
    expect(state(k)[0]?.state).toBe("pass");
    expect(state({ ...k, errorCelsius: 4 })[0]?.state).toBe("conditional-pass");
    expect(state({ ...k, errorCelsius: 4.8 })[0]?.state).toBe("conditional-fail");
    expect(state({ ...k, errorCelsius: 9 })[0]?.state).toBe("fail");
    expect(state(k, { decisionRule: { kind: "none" } })[0]?.state).toBe("no-statement");
    expect(state({ ...k, errorCelsius: 4.4 }, { decisionRule: { kind: "simple" } })[0]?.state).toBe("pass");
    expect(state({ ...k, errorCelsius: 4.8 }, { decisionRule: { kind: "simple" } })[0]?.state).toBe("fail");
  });

  it("is not decidable when U reaches the tolerance", () => {
    const [s] = state({ sensors: ["S"] }, { decisionRule: { kind: "guarded", guardBandRatio: 3 } });
    expect(s).toMatchObject({ state: "not-decidable", acceptanceCelsius: null });
  });

  it("has no tolerance for class 1 of K and N at 1100 °C", () => {
    const evidence = buildEvidence({ nominals: [1100], sensors: ["K", "N", "S"] });
    const sensors = evidence.sensors.map((s) => ({
      ...s,
      tolerance: { standard: "IEC 60584-1:2013" as const, class: "1" as const },
    }));
    expect(measured({ ...evidence, sensors }).map((p) => p.conformity.state)).toEqual([
      "no-tolerance-defined",
      "no-tolerance-defined",
      "pass",
    ]);
  });

  it("prints tolerance and probability as bounds, never as certainty", () => {
    const printed = (errorCelsius: number) => state({ sensors: ["K"], errorCelsius })[0]?.printed;
    expect(printed(0)).toEqual({ tolerance: "4.5", probability: "> 99.9 %" });
    expect(printed(12)?.probability).toBe("< 0.1 %");
    expect(printed(4.5)?.probability).toMatch(/^\d\d\.\d %$/);
  });
});

describe("what was not measured", () => {
  it("keeps its state and reason, and asks nothing of the readings", () => {
    const evidence = buildEvidence({ sensors: ["K", "N"] });
    const channels = evidence.scans.channels.filter(({ channel }) => channel !== "102");
    const { points } = evaluate({
      ...evidence,
      scans: { ...evidence.scans, channels },
      states: [{ sensor: "X1", setpoint: "600", state: "invalid", reason: "open circuit above 550 °C" }],
    });
    expect(points[0]).toEqual({
      state: "invalid",
      sensor: "X1",
      setpoint: "600",
      type: "K",
      nominalCelsius: 600,
      reason: "open circuit above 550 °C",
    });
    expect(points[1]?.state).toBe("measured");
  });

  it("is not reached where no window was accepted", () => {
    const evidence = buildEvidence({ nominals: [600, 900], sensors: ["K"] });
    const { points } = evaluate({ ...evidence, windows: evidence.windows.slice(0, 1) });
    expect(points.map(({ state }) => state)).toEqual(["measured", "not-reached"]);
  });
});
