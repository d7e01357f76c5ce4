import { describe, expect, it } from "vitest";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { buildEvidence, microvoltOf } from "./build-evidence";
import { lineOf, problems, rectangular, withFurnace, withSensor, zero } from "./changed-evidence";
import { evaluate, measured } from "./measured";

describe("a line that acts from a temperature on", () => {
  const evidence = (nominal: number) =>
    withSensor(buildEvidence({ sensors: ["K"], nominals: [nominal] }), {
      shunting: rectangular(0.3, { fromCelsius: 1000 }),
    });

  it("is zero below it, and says from where it acts", () => {
    const line = lineOf(measured(evidence(900))[0], "sensor.shunting");
    expect([line.effect, line.distribution]).toEqual([0, "none"]);
    expect(line.source).toBe("acts from 1000 °C only: invented");
  });

  it("acts at that temperature and above", () => {
    const [point] = measured(evidence(1000));
    expect(lineOf(point, "sensor.shunting").effect).toBeCloseTo(
      (0.3 / Math.sqrt(3)) * (point?.seebeckMicrovoltPerCelsius ?? 0),
      9,
    );
  });
});

describe("inhomogeneity by a share of the tolerance", () => {
  const rule = { kind: "tolerance-share", share: 0.2, toleranceClass: "2", source: "20 % rule" } as const;

  it("is a rectangle of a fifth of class 2: K at 1000 °C ±1.5 °C, S ±0.5 °C", () => {
    const scene = { nominals: [1000] };
    const [k, , s] = measured(withSensor(buildEvidence(scene), { inhomogeneity: rule }));
    expect(lineOf(k, "sensor.inhomogeneity").standardUncertainty).toBeCloseTo(1.5 / Math.sqrt(3), 12);
    expect(lineOf(s, "sensor.inhomogeneity").standardUncertainty).toBeCloseTo(0.5 / Math.sqrt(3), 12);
    expect(lineOf(s, "sensor.inhomogeneity")).toMatchObject({
      distribution: "rectangular",
      source: "20 % rule",
    });
  });

  it("is refused where the class has no tolerance", () => {
    const evidence = withSensor(buildEvidence({ sensors: ["S"] }), {
      inhomogeneity: { ...rule, toleranceClass: "3" },
    });
    expect(problems(evidence)).toMatchObject([
      { path: "sensors[0].inhomogeneity", message: expect.stringContaining("class 3") },
    ]);
  });
});

describe("lines that cover the same thing", () => {
  const k = buildEvidence({ sensors: ["K", "N"] });
  const doubled = (evidence: EvidenceInput) =>
    evaluate(evidence).findings.filter(({ code }) => code === "counted-twice");

  it("are named once a pair, however many sensors there are", () => {
    const found = doubled(withFurnace(k, { axial: rectangular(0.3), radial: rectangular(0.2) }));
    expect(found.map(({ message }) => /“(.*?)” and “(.*?)”/.exec(message)?.slice(1))).toEqual([
      ["Furnace non-uniformity", "Axial non-uniformity"],
      ["Furnace non-uniformity", "Radial non-uniformity"],
    ]);
    expect(found[0]?.path).toBe("configuration.characterisation.uniformity");
  });

  it("a corrected gradient replaces all three", () => {
    const apart = { uniformity: zero, axial: rectangular(0.3), radial: rectangular(0.2) };
    expect(doubled(withFurnace(k, apart))).toEqual([]);
    expect(doubled(withFurnace(k, { ...apart, gradient: rectangular(0.1) }))).toHaveLength(2);
    expect(doubled(withFurnace(k, { gradient: rectangular(0.1) }))).toHaveLength(1);
  });

  it("immersion overlaps with the axial line, for each sensor that states it", () => {
    const immersed = withSensor(k, { immersion: rectangular(0.2) });
    expect(doubled(immersed)).toEqual([]);
    const found = doubled(withFurnace(immersed, { uniformity: zero, axial: rectangular(0.3) }));
    expect(found.map(({ path }) => path)).toEqual(["sensors[0].immersion", "sensors[1].immersion"]);
    expect(found[0]?.message).toContain("Sensor X1");
  });

  it("each names the other", () => {
    const [point] = measured(k);
    const lines = [
      ...(point?.temperatureBudget.contributions ?? []),
      ...(point?.emfBudget.contributions ?? []),
    ];
    for (const line of lines) {
      for (const other of line.excludes) {
        expect(lineOf(point, other).excludes, `${other} names ${line.key}`).toContain(line.key);
      }
    }
  });
});

describe("what is corrected at the sensor", () => {
  it("the place's offset moves the temperature it stands at", () => {
    const evidence = buildEvidence({ sensors: ["K"] });
    const load = evidence.load.map((place) =>
      place.item.kind === "sensor" ? { ...place, offsetCelsius: 0.4 } : place,
    );
    const [point] = measured({ ...evidence, load });
    expect(point?.referenceCelsius).toBeCloseTo(600.4, 9);
    expect(point?.errorCelsius).toBeCloseTo(-0.4, 9);
  });

  it("the cable's lot adds its correction to the emf", () => {
    const evidence = buildEvidence({ sensors: ["K"] });
    const [point] = measured(withSensor(evidence, { cable: { lot: "L-7", correctionMicrovolt: -6 } }));
    expect(point?.deviationMicrovolt).toBeCloseTo(-6, 6);
  });
});

describe("the shorted channel as zero", () => {
  const parasitic = 3;
  const shorted = (scene: object = {}, channel = "120"): EvidenceInput => {
    const evidence = buildEvidence({ sensors: ["K"], parasiticMicrovolt: parasitic, ...scene });
    const [first] = evidence.scans.channels as [EvidenceInput["scans"]["channels"][number]];
    return {
      ...evidence,
      comparison: { ...evidence.comparison, zero: { kind: "shorted-channel", channel } },
      load: [...evidence.load, { place: "z", item: { kind: "shorted" }, channel: "120", junction: "J" }],
      scans: {
        ...evidence.scans,
        channels: [
          ...evidence.scans.channels,
          { ...first, channel: "120", microvolts: first.microvolts.map(() => parasitic) },
        ],
      },
    };
  };

  it("is taken off every unreversed reading", () => {
    const [point] = measured(shorted());
    expect(point?.zeroMicrovolt).toBe(parasitic);
    expect(point?.deviationMicrovolt).toBeCloseTo(0, 6);
  });

  it("is not taken off where the reversal has done it", () => {
    const [point] = measured(shorted({ isReversing: true }));
    expect(point?.zeroMicrovolt).toBe(0);
    expect(point?.deviationMicrovolt).toBeCloseTo(0, 6);
  });

  it("must be a shorted channel of the load, with readings in the window", () => {
    expect(problems(shorted({}, "102"))).toMatchObject([{ path: "comparison.zero.channel" }]);
    const evidence = shorted();
    const channels = evidence.scans.channels.map((c) =>
      c.channel === "120" ? { ...c, seconds: c.seconds.map((t) => t + 10_000) } : c,
    );
    expect(problems({ ...evidence, scans: { ...evidence.scans, channels } })).toMatchObject([
      { path: "comparison.zero.channel", message: expect.stringContaining("no reading between") },
    ]);
  });
});

describe("the types", () => {
  it.each(["B", "E", "J", "K", "N", "R", "S", "T"] as const)("type %s is evaluated", (type) => {
    const nominal = type === "T" ? 350 : type === "J" ? 700 : 900;
    const [point] = measured(buildEvidence({ sensors: [type], nominals: [nominal] }));
    expect(point?.errorCelsius).toBeCloseTo(0, 8);
  });

  it.each(["C", "A"] as const)("type %s is refused in air", (type) => {
    const found = problems(buildEvidence({ sensors: [type] }));
    expect(found).toMatchObject([{ path: "sensors[0].type", message: expect.stringContaining("oxidises") }]);
  });

  it.each(["Au/Pt", "Pt/Pd"] as const)("a reference of %s serves", (type) => {
    const evidence = buildEvidence({ sensors: ["S"], nominals: [800] });
    const correction = {
      kind: "points" as const,
      points: [500, 900].map((celsius) => ({ celsius, deviationMicrovolt: 0 })),
    };
    const references = evidence.references.map((r) => ({ ...r, type, correction }));
    const channels = evidence.scans.channels.map((c, i) =>
      i === 1 ? c : { ...c, microvolts: c.microvolts.map(() => microvoltOf(type, 800)) },
    );
    const [point] = measured({ ...evidence, references, scans: { ...evidence.scans, channels } });
    expect(point?.referenceCelsius).toBeCloseTo(800, 8);
  });
});
