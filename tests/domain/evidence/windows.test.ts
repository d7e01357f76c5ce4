import { describe, expect, it } from "vitest";
import { assessMovedWindow, proposeWindows } from "@/lib/domain/evidence/propose-windows";
import { referenceAgreement } from "@/lib/domain/evidence/reference-agreement";
import { referenceTemperatures } from "@/lib/domain/evidence/reference-temperatures";
import { Evidence, type EvidenceInput } from "@/lib/domain/evidence/schema";
import { stabilityCriterion } from "@/lib/domain/evidence/stability-criterion";
import { buildEvidence } from "./build-evidence";

const parsed = (input: EvidenceInput): Evidence => Evidence.parse(input);

describe("referenceTemperatures", () => {
  it("gives back the furnace, reading by reading, with reversed leads and a warm junction", () => {
    const furnace = (t: number): number => 400 + 0.3 * t;
    const series = referenceTemperatures(
      parsed(buildEvidence({ furnace, junctionCelsius: 24, isReversing: true })),
    );
    expect(series.map(({ id, channel }) => [id, channel])).toEqual([
      ["R1", "101"],
      ["R2", "105"],
    ]);
    for (const { seconds, celsius, refused } of series) {
      expect(refused).toEqual([]);
      for (let i = 0; i < seconds.length; i += 1) {
        expect(celsius[i]).toBeCloseTo(furnace(seconds[i] as number), 8);
      }
    }
  });

  it("takes correction and deviation into account", () => {
    const evidence = buildEvidence();
    const [series] = referenceTemperatures(
      parsed({
        ...evidence,
        voltmeter: { ...evidence.voltmeter, corrections: [{ microvolt: 0, correctionMicrovolt: 2 }] },
        references: evidence.references.map((r) => ({
          ...r,
          correction: {
            kind: "points",
            points: [250, 1150].map((celsius) => ({ celsius, deviationMicrovolt: 2 })),
          },
        })),
      }),
    );
    expect(series?.celsius[0]).toBeCloseTo(600, 8);
  });

  it("goes on beyond the certified points, where an evaluation would refuse", () => {
    const [series] = referenceTemperatures(parsed(buildEvidence({ furnace: () => 120 })));
    expect(series?.celsius[0]).toBeCloseTo(120, 8);
  });

  it("leaves out a reading that has no temperature, and names it", () => {
    const evidence = buildEvidence();
    evidence.scans.channels[0]?.microvolts.splice(3, 1, 99_999);
    const [series] = referenceTemperatures(parsed(evidence));
    expect(series?.seconds).toHaveLength(89);
    expect(series?.refused).toEqual([
      { seconds: 30, message: expect.stringContaining("99999 µV has no temperature") },
    ]);
  });

  it("converts no more than the window it is given", () => {
    const [series] = referenceTemperatures(parsed(buildEvidence()), { fromSeconds: 100, toSeconds: 200 });
    expect(series?.seconds[0]).toBe(100);
    expect(series?.seconds).toHaveLength(11);
  });
});

describe("referenceAgreement", () => {
  const agreement = (change: (evidence: EvidenceInput) => EvidenceInput = (e) => e): number =>
    referenceAgreement(parsed(change(buildEvidence())), 600);

  it("is twice the root of what each reference has for itself", () => {
    // repeatability 0.05; drift 0.15/√3; inhomogeneity 0.02 % of 5238.69 µV/√3; position 0.4/√3;
    // parasitic 0.5 µV/√3; resolution 0.05 µV/√3: each twice.
    const slope = 10.2072;
    const parts = [
      0.05 ** 2,
      0.15 ** 2 / 3,
      (0.0002 * 5238.69) ** 2 / 3 / slope ** 2,
      0.4 ** 2 / 3,
      0.5 ** 2 / 3 / slope ** 2,
      0.05 ** 2 / 3 / slope ** 2,
    ];
    expect(agreement()).toBeCloseTo(2 * Math.sqrt(2 * parts.reduce((a, b) => a + b, 0)), 5);
  });

  it("leaves the certificates out when one laboratory made both, and counts them when two did", () => {
    const foreign = agreement((e) => ({
      ...e,
      references: e.references.map((r, i) => ({
        ...r,
        calibration: { ...r.calibration, issuer: `Laboratory ${i}` },
      })),
    }));
    // u 0.2 °C each.
    expect(foreign ** 2 - agreement() ** 2).toBeCloseTo(4 * 2 * 0.2 ** 2, 9);
  });

  it("counts a junction only when each has its own", () => {
    const own = agreement((e) => ({
      ...e,
      junctions: [...e.junctions, ...e.junctions.map((j) => ({ ...j, id: "J2" }))],
      load: e.load.map((p, i) => (i === 0 ? { ...p, junction: "J2" } : p)),
    }));
    const junction = (0.05 / Math.sqrt(3)) * (5.403 / 10.2072);
    expect(own ** 2 - agreement() ** 2).toBeCloseTo(4 * 2 * junction ** 2, 6);
  });

  it("is nothing with one reference", () => {
    expect(
      agreement((e) => ({ ...e, references: e.references.slice(0, 1), load: e.load.slice(0, -1) })),
    ).toBe(0);
  });
});

describe("stabilityCriterion", () => {
  it("is stricter as soon as one sensor is noble", () => {
    const limit = (sensors: ("K" | "N" | "R" | "S")[]): number =>
      stabilityCriterion(parsed(buildEvidence({ sensors })), 600).slopeTimesLengthCelsius;
    expect([limit(["K", "N"]), limit(["K", "R"]), limit(["S"])]).toEqual([0.3, 0.1, 0.1]);
  });
});

describe("proposeWindows", () => {
  /** Five minutes of ramp before each of two dwells of 20 minutes. */
  const furnace = (t: number): number => {
    if (t < 300) return 575 + (25 * t) / 300;
    if (t < 1500) return 600;
    return t < 1800 ? 600 + t - 1500 : 900;
  };
  const evidence = parsed(buildEvidence({ nominals: [600, 900, 1000], furnace, scans: 300 }));

  it("has one for each setpoint that the furnace stood at, and the reason for the other", () => {
    const [low, high, never] = proposeWindows(evidence);
    expect(low).toMatchObject({ setpoint: "600", proposal: { kind: "proposed", window: { meets: true } } });
    expect(high).toMatchObject({ setpoint: "900", proposal: { kind: "proposed" } });
    expect(never).toMatchObject({ setpoint: "1000", proposal: { kind: "none" } });
    if (low?.proposal.kind === "proposed") {
      expect(low.proposal.window.fromSeconds).toBeGreaterThanOrEqual(280);
      expect(low.proposal.window.toSeconds).toBeLessThanOrEqual(1510);
      expect(low.proposal.window.meanCelsius).toBeCloseTo(600, 1);
    }
  });

  it("gives a moved window the same numbers, from the whole series or the part", () => {
    const [low] = proposeWindows(evidence);
    if (low?.proposal.kind !== "proposed") throw new Error("no proposal");
    const { fromSeconds, toSeconds } = low.proposal.window;
    const window = { fromSeconds, toSeconds };
    const expected = { ok: true, value: low.proposal.window };
    expect(assessMovedWindow(evidence, 600, window)).toEqual(expected);
    expect(assessMovedWindow(evidence, 600, window, referenceTemperatures(evidence))).toEqual(expected);
  });

  it("proposes what then evaluates without a finding about the furnace", () => {
    const [low] = proposeWindows(evidence);
    expect(low?.proposal.kind === "proposed" && low.proposal.window.reasons).toEqual([]);
  });
});
