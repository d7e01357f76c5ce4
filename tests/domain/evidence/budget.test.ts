import { describe, expect, it } from "vitest";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { buildEvidence } from "./build-evidence";
import { measure, measured } from "./measured";

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
      "heater.pickup@reference",
      "junction@reference",
      "junction.spread@reference",
      "reference.drift",
      "reference.interpolation",
      "reference.inhomogeneity",
      "furnace.uniformity",
      "furnace.axial",
      "furnace.radial",
      "furnace.gradient",
      "furnace.stability",
    ]);
    expect(points[0]?.emfBudget.contributions.map(({ key }) => key)).toEqual([
      "sensor.repeatability",
      "voltmeter.calibration@sensor",
      "voltmeter.drift@sensor",
      "voltmeter.resolution@sensor",
      "scanner.parasitic@sensor",
      "heater.pickup@sensor",
      "sensor.lead",
      "furnace.temperature",
      "junction@sensor",
      "junction.spread@sensor",
      "sensor.inhomogeneity",
      "sensor.immersion",
      "sensor.shunting",
      "sensor.hysteresis",
      "shared",
    ]);
  });

  it("has effect = sensitivity × u in each line, and u_c² = Σ variance", () => {
    for (const point of points) {
      for (const budget of [point.temperatureBudget, point.emfBudget]) {
        let squares = 0;
        for (const line of budget.contributions) {
          expect(line.effect).toBeCloseTo(line.sensitivity * line.standardUncertainty, 12);
          squares += line.variance;
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
