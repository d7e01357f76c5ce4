import { describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { Evaluation, MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { buildEvidence, type Scene } from "./build-evidence";

function evaluate(evidence: EvidenceInput): Evaluation {
  const outcome = evaluateEvidence(evidence);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.evaluation;
}

function measured(evidence: EvidenceInput): MeasuredPoint[] {
  return evaluate(evidence).points.map((point) => {
    if (point.state !== "measured") throw new Error(point.reason);
    return point;
  });
}

const measure = (scene: Scene): MeasuredPoint[] => measured(buildEvidence(scene));

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
      deviations: [
        { celsius: 250, deviationMicrovolt: 4 },
        { celsius: 1150, deviationMicrovolt: 4 },
      ],
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

describe("the budget", () => {
  const points = measure({});

  it("has every line of both stages, in order", () => {
    expect(points[0]?.temperatureBudget.contributions.map(({ key }) => key)).toEqual([
      "reference.repeatability",
      "reference.calibration",
      "voltmeter.calibration@reference",
      "voltmeter.drift@reference",
      "voltmeter.resolution@reference",
      "scanner.parasitic@reference",
      "junction@reference",
      "reference.drift",
      "reference.inhomogeneity",
      "furnace.uniformity",
    ]);
    expect(points[0]?.emfBudget.contributions.map(({ key }) => key)).toEqual([
      "sensor.repeatability",
      "voltmeter.calibration@sensor",
      "voltmeter.drift@sensor",
      "voltmeter.resolution@sensor",
      "scanner.parasitic@sensor",
      "sensor.lead",
      "furnace.temperature",
      "junction@sensor",
      "sensor.inhomogeneity",
    ]);
  });

  it("has effect = sensitivity × u in each line, and u_c² = Σ effect²", () => {
    for (const point of points) {
      for (const budget of [point.temperatureBudget, point.emfBudget]) {
        let squares = 0;
        for (const line of budget.contributions) {
          expect(line.effect).toBeCloseTo(line.sensitivity * line.standardUncertainty, 12);
          squares += line.effect ** 2;
        }
        expect(budget.combined).toBeCloseTo(Math.sqrt(squares), 9);
      }
    }
  });

  it("turns a relative inhomogeneity into µV of the emf, and into °C by the sensitivity", () => {
    const sensorLine = points[0]?.emfBudget.contributions.find(({ key }) => key === "sensor.inhomogeneity");
    expect(sensorLine).toMatchObject({ unit: "µV", sensitivity: 1 });
    expect(sensorLine?.effect).toBeCloseTo((0.0005 * 24905.467) / Math.sqrt(3), 4);
    const line = points[0]?.temperatureBudget.contributions.find(
      ({ key }) => key === "reference.inhomogeneity",
    );
    expect(line).toMatchObject({ unit: "µV", sensitivityUnit: "°C/µV" });
    expect(line?.effect).toBeCloseTo((0.0002 * 5238.69) / Math.sqrt(3) / 10.2072, 5);
  });

  it("weighs the junction by the Seebeck coefficient at its own temperature", () => {
    const [warm] = measure({ junctionCelsius: 25, sensors: ["K"] });
    const line = warm?.emfBudget.contributions.find(({ key }) => key === "junction@sensor");
    expect(line?.sensitivity).toBeCloseTo(-40.518, 3);
    const reference = warm?.temperatureBudget.contributions.find(({ key }) => key === "junction@reference");
    expect(reference?.sensitivity).toBeCloseTo(-5.991 / 10.2072, 4);
  });

  it("has ν_eff over both stages and its k", () => {
    const [k] = points;
    const finite = [
      ...(k?.temperatureBudget.contributions ?? []).map((line) => ({
        ...line,
        effect: line.effect * (k?.seebeckMicrovoltPerCelsius ?? 0),
      })),
      ...(k?.emfBudget.contributions ?? []).filter(({ key }) => key !== "furnace.temperature"),
    ].filter((line) => line.degreesOfFreedom !== null);
    expect(finite.map(({ key }) => key)).toEqual(["reference.repeatability", "sensor.repeatability"]);
    const denominator = finite.reduce(
      (sum, line) => sum + line.effect ** 4 / (line.degreesOfFreedom ?? 0),
      0,
    );
    expect(k?.degreesOfFreedom).toBeCloseTo((k?.combinedMicrovolt ?? 0) ** 4 / denominator, 3);
    expect(k?.expandedMicrovolt).toBe((k?.coverageFactor ?? 0) * (k?.combinedMicrovolt ?? 0));
  });

  it("has a larger k when a repeatability of few readings dominates", () => {
    const evidence = buildEvidence({ sensors: ["S"] });
    const sensors = evidence.sensors.map((s) => ({
      ...s,
      repeatability: {
        kind: "standard" as const,
        standard: 40,
        unit: "microvolt" as const,
        degreesOfFreedom: 3,
        source: "x",
      },
    }));
    const [point] = measured({ ...evidence, sensors });
    expect(point?.dominant).toBe("sensor.repeatability");
    expect(point?.coverageFactor).toBeCloseTo(3.307, 3);
    expect(point?.printed.degreesOfFreedom).toBe("3");
    expect(point?.printed.coverageFactor).toBe("3.31");
  });

  it("counts two references as one observation: a second one takes nothing off", () => {
    const evidence = buildEvidence({ sensors: ["K"] });
    const single = {
      ...evidence,
      references: evidence.references.slice(0, 1),
      load: evidence.load.slice(0, -1),
      scans: { ...evidence.scans, channels: evidence.scans.channels.slice(0, -1) },
    };
    const two = measured(evidence)[0]?.temperatureBudget.combined ?? 0;
    const one = measured(single)[0]?.temperatureBudget.combined ?? 1;
    expect(two).toBeCloseTo(one, 9);
  });

  it("takes the mean of references that differ, in one unit or in two", () => {
    const evidence = buildEvidence({ sensors: ["K"] });
    const [first, second] = evidence.references as [
      EvidenceInput["references"][number],
      EvidenceInput["references"][number],
    ];
    const wider = {
      ...second,
      calibrationUncertainty: {
        kind: "expanded" as const,
        expanded: 0.8,
        coverageFactor: 2,
        unit: "celsius" as const,
        source: "b",
      },
    };
    const line = (evidenceInput: EvidenceInput) =>
      measured(evidenceInput)[0]?.temperatureBudget.contributions.find(
        ({ key }) => key === "reference.calibration",
      );
    expect(line({ ...evidence, references: [first, wider] })).toMatchObject({
      effect: 0.30000000000000004,
      unit: "°C",
    });
    const inMicrovolt = {
      ...second,
      calibrationUncertainty: {
        kind: "standard" as const,
        standard: 10.2072,
        unit: "microvolt" as const,
        source: "c",
      },
    };
    const mixed = line({ ...evidence, references: [first, inMicrovolt] });
    expect(mixed?.effect).toBeCloseTo((0.2 + 1) / 2, 4);
    expect(mixed).toMatchObject({ unit: "°C", sensitivity: 1, distribution: "normal" });
    expect(mixed?.source).toBe("invented; c");
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

describe("speed", () => {
  it("evaluates twenty channels of five thousand scans in well under a second", () => {
    const evidence = buildEvidence({
      sensors: Array.from({ length: 18 }, (_, i) => (["K", "N", "S"] as const)[i % 3] ?? "K"),
      scans: 5000,
    });
    const started = performance.now();
    const { points } = evaluate(evidence);
    const milliseconds = performance.now() - started;
    process.stdout.write(`20 channels × 5000 scans evaluated in ${milliseconds.toFixed(0)} ms\n`);
    expect(points).toHaveLength(18);
    expect(milliseconds).toBeLessThan(1500);
  });
});
