import { describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { EvidenceFinding } from "@/lib/domain/evidence/evaluation";
import type { EvidenceInput, TypeLetter } from "@/lib/domain/evidence/schema";
import { buildEvidence, type Scene } from "./build-evidence";

function findingsOf(evidence: EvidenceInput): readonly EvidenceFinding[] {
  const outcome = evaluateEvidence(evidence);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.evaluation.findings;
}

const codes = (evidence: EvidenceInput): string[] => findingsOf(evidence).map(({ code }) => code);

/** The readings of two channels exchanged, as a wrong connection at the scanner exchanges them. */
function swap(evidence: EvidenceInput, a: string, b: string): EvidenceInput {
  const channels = evidence.scans.channels.map((c) =>
    c.channel === a ? { ...c, channel: b } : c.channel === b ? { ...c, channel: a } : c,
  );
  return { ...evidence, scans: { ...evidence.scans, channels } };
}

it("a clean run has nothing to look at", () => {
  expect(findingsOf(buildEvidence())).toEqual([]);
});

describe("swapped channels", () => {
  const pairs: [TypeLetter, TypeLetter][] = [
    ["K", "N"],
    ["K", "S"],
    ["K", "R"],
    ["N", "S"],
    ["N", "R"],
    ["R", "S"],
  ];
  const scenes: Scene[] = [300, 600, 900, 1100].flatMap((nominal) => [
    { nominals: [nominal], errorCelsius: 1.2, junctionCelsius: 23 },
    { nominals: [nominal], errorCelsius: -1.2, furnace: () => nominal + 4 },
  ]);

  it.each(pairs)("types %s and %s are caught and both named, 300 to 1100 °C", (a, b) => {
    for (const scene of scenes) {
      const evidence = swap(buildEvidence({ ...scene, sensors: [a, b] }), "102", "103");
      const found = findingsOf(evidence).filter(({ code }) => code === "swapped-channels");
      expect(found, `${a} ${b} at ${scene.nominals}`).toHaveLength(1);
      expect(found[0]?.message).toContain(`channel 102 (serial-1, type ${a})`);
      expect(found[0]?.message).toContain(`channel 103 (serial-2, type ${b})`);
    }
  });

  it.each(pairs)("types %s and %s connected as they should be raise nothing, even when bad", (a, b) => {
    for (const scene of scenes) {
      for (const errorCelsius of [-6, 0, 6]) {
        const evidence = buildEvidence({ ...scene, errorCelsius, sensors: [a, b] });
        expect(codes(evidence)).not.toContain("swapped-channels");
      }
    }
  });

  it("finds the two among many", () => {
    const evidence = swap(buildEvidence({ sensors: ["K", "N", "S", "K", "N"] }), "104", "106");
    const found = findingsOf(evidence).filter(({ code }) => code === "swapped-channels");
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toMatch(/104 \(serial-3, type S\) and channel 106 \(serial-5, type N\)/);
  });

  it("a reference on a sensor's channel stops the evaluation, and the swap is named first", () => {
    for (const [type, nominal] of [
      ["K", 300],
      ["N", 1100],
    ] as const) {
      const outcome = evaluateEvidence(
        swap(buildEvidence({ sensors: [type], nominals: [nominal] }), "101", "102"),
      );
      expect(outcome.ok).toBe(false);
      if (!outcome.ok)
        expect(outcome.problems[0]?.message).toMatch(/channel 101 .* and channel 102 .* swapped/);
    }
  });

  it("two channels of one type cannot be told apart here", () => {
    const evidence = buildEvidence({ sensors: ["K", "K"] });
    expect(codes(swap(evidence, "102", "103"))).toEqual([]);
  });
});

describe("the furnace", () => {
  it("windows shorter than ten minutes are said", () => {
    const evidence = buildEvidence();
    const found = findingsOf({ ...evidence, windows: [{ setpoint: "600", fromSeconds: 0, toSeconds: 300 }] });
    expect(found).toEqual([
      {
        code: "window-not-stable",
        path: "windows[0]",
        message: expect.stringMatching(/5\.0 min long.*10\.0 min/),
      },
    ]);
  });

  it("a drift beyond the criterion is said: 0.1 °C with a noble sensor, 0.3 °C with base metal alone", () => {
    const drifting = (sensors: TypeLetter[], celsius: number) =>
      codes(buildEvidence({ sensors, scans: 91, furnace: (t) => 600 + (celsius * t) / 905 }));
    expect(drifting(["K", "S"], 0.08)).toEqual([]);
    expect(drifting(["K", "S"], 0.2)).toEqual(["window-not-stable"]);
    expect(drifting(["K", "N"], 0.2)).toEqual([]);
    expect(drifting(["K", "N"], 0.4)).toEqual(["window-not-stable"]);
  });

  it("references further apart than U of their difference are said", () => {
    const evidence = buildEvidence();
    const apart = (celsius: number): EvidenceInput => ({
      ...evidence,
      scans: {
        ...evidence.scans,
        channels: evidence.scans.channels.map((c) =>
          c.channel === "105" ? { ...c, microvolts: c.microvolts.map((v) => v + celsius * 10.2072) } : c,
        ),
      },
    });
    expect(codes(apart(0.3))).toEqual([]);
    expect(findingsOf(apart(1.5))).toEqual([
      { code: "references-disagree", path: "windows[0]", message: expect.stringContaining("differ by 1.5") },
    ]);
  });

  it("a window of one scan cannot be judged, and says so", () => {
    const evidence = buildEvidence();
    const found = findingsOf({
      ...evidence,
      windows: [{ setpoint: "600", fromSeconds: 100, toSeconds: 105 }],
    });
    expect(found[0]).toMatchObject({ code: "window-not-judged", path: "windows[0]" });
  });
});

describe("tip checks", () => {
  it("missing and low ones are said, at the place", () => {
    const evidence = buildEvidence({ sensors: ["K", "N"] });
    const rises = [80, null, 12, 20];
    const load = evidence.load.map((place, i) => ({ ...place, tipCheckRiseMicrovolt: rises[i] ?? null }));
    expect(findingsOf({ ...evidence, load }).map(({ code, path }) => [code, path])).toEqual([
      ["tip-check-missing", "load[1].tipCheckRiseMicrovolt"],
      ["tip-check-low", "load[2].tipCheckRiseMicrovolt"],
    ]);
  });
});

describe("calibrations", () => {
  const onDay = (startedAt: string | undefined): EvidenceInput => {
    const evidence = buildEvidence();
    return { ...evidence, scans: { ...evidence.scans, startedAt } };
  };

  it("count on their first day and on their last", () => {
    expect(codes(onDay("2026-01-10T00:00:00Z"))).toEqual([]);
    expect(codes(onDay("2027-01-10T23:59:00Z"))).toEqual([]);
  });

  it("are out of date the day after, each named", () => {
    const found = findingsOf(onDay("2027-01-11T08:00:00Z"));
    expect(found.map(({ path }) => path)).toEqual([
      "references[0].calibration.dueOn",
      "references[1].calibration.dueOn",
      "voltmeter.calibration.dueOn",
    ]);
    expect(found[0]?.message).toContain("reference reference-R1 (T-1) was due on 2027-01-10");
  });

  it("made after the run do not count", () => {
    expect(findingsOf(onDay("2026-01-09T08:00:00Z"))[0]).toMatchObject({
      code: "calibration-not-valid",
      path: "references[0].calibration.performedOn",
    });
  });

  it("cannot be judged without the day", () => {
    expect(codes(onDay(undefined))).toEqual(["day-unknown"]);
  });

  it("include scanner, junction and the furnace's characterisation", () => {
    const evidence = buildEvidence();
    const calibration = { certificate: "C", issuer: "I", performedOn: "2025-01-01", dueOn: "2025-12-31" };
    const found = findingsOf({
      ...evidence,
      scanner: { ...evidence.scanner, calibration },
      junctions: evidence.junctions.map((j) => ({ ...j, calibration })),
      configuration: {
        ...evidence.configuration,
        characterisation: { ...evidence.configuration.characterisation, validUntil: "2026-05-31" },
      },
    });
    expect(found.map(({ path }) => path)).toEqual([
      "scanner.calibration.dueOn",
      "junctions[0].calibration.dueOn",
      "configuration.characterisation.validUntil",
    ]);
  });
});

describe("large deviations", () => {
  it("begin beyond twice class 2", () => {
    expect(codes(buildEvidence({ sensors: ["K"], errorCelsius: 8.9 }))).toEqual([]);
    const [finding] = findingsOf(buildEvidence({ sensors: ["K"], errorCelsius: 9.2 }));
    expect(finding).toMatchObject({ code: "deviation-large", path: "sensors[0]" });
  });
});

describe("a shorted channel", () => {
  const withShort = (microvolt: number): EvidenceInput => {
    const evidence = buildEvidence();
    const [first] = evidence.scans.channels;
    return {
      ...evidence,
      load: [...evidence.load, { place: "z", item: { kind: "shorted" }, channel: "120", junction: "J" }],
      scans: {
        ...evidence.scans,
        channels: [
          ...evidence.scans.channels,
          {
            channel: "120",
            seconds: [...(first?.seconds ?? [])],
            microvolts: (first?.seconds ?? []).map(() => microvolt),
            polarity: (first?.seconds ?? []).map(() => 1 as const),
          },
        ],
      },
    };
  };

  it("is quiet within what scanner and voltmeter may show at zero, and named beyond", () => {
    expect(codes(withShort(0.49))).toEqual([]);
    expect(codes(withShort(-0.49))).toEqual([]);
    expect(findingsOf(withShort(-2.5))[0]).toMatchObject({
      code: "shorted-channel-high",
      path: "load[5].channel",
      message: expect.stringContaining("-2.50 µV"),
    });
  });
});
