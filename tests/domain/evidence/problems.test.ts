import { describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { EvidenceProblem } from "@/lib/domain/evidence/evaluation";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { buildEvidence } from "./build-evidence";
import { type Loose, problemCases } from "./problem-cases";

function problemsOf(
  spoil: (evidence: Loose) => void,
  evidence: EvidenceInput = buildEvidence(),
): readonly EvidenceProblem[] {
  const copy = structuredClone(evidence);
  spoil(copy);
  const outcome = evaluateEvidence(copy);
  return outcome.ok ? [] : outcome.problems;
}

it("has no problem to begin with", () => {
  expect(problemsOf(() => undefined)).toEqual([]);
});

it.each(problemCases)("%s is refused at its path", (_name, spoil, path, says) => {
  const problems = problemsOf(spoil);
  const named = problems.find((problem) => problem.path === path);
  expect(named?.message, JSON.stringify(problems).slice(0, 600)).toMatch(says);
});

describe("a single certified point", () => {
  it("holds as far as it is said to reach, both ends included", () => {
    const single = (celsius: number) =>
      problemsOf((e) => {
        for (const reference of e.references) {
          reference.correction.points = [{ celsius, deviationMicrovolt: 0 }];
          reference.correction.singlePointReachCelsius = 2;
        }
      });
    expect(single(601.9)).toEqual([]);
    expect(single(598.1)).toEqual([]);
    expect(single(602.1)).not.toEqual([]);
    expect(single(597.9)).not.toEqual([]);
  });
});

describe("the ends of a certificate", () => {
  it("belong to it", () => {
    const between = (from: number, to: number) =>
      problemsOf((e) => {
        for (const reference of e.references) {
          reference.correction.points = [from, to].map((celsius) => ({ celsius, deviationMicrovolt: -3 }));
        }
        for (const index of [0, 4]) {
          e.scans.channels[index].microvolts = e.scans.channels[index].microvolts.map((v: number) => v - 3);
        }
      });
    expect(between(300, 600)).toEqual([]);
    expect(between(600, 900)).toEqual([]);
    expect(between(300, 599.999)).not.toEqual([]);
    expect(between(600.001, 900)).not.toEqual([]);
  });
});

describe("reversed leads", () => {
  const reversing = () => buildEvidence({ isReversing: true });

  it("need forward readings too", () => {
    const [problem] = problemsOf((e) => e.scans.channels[1].polarity.fill(-1));
    expect(problem?.path).toBe("scans.channels[1].polarity");
    expect(problem?.message).toContain("0 forward and 90 reversed");
  });

  it("may differ by one, as a moved window leaves them", () => {
    expect(problemsOf((e) => (e.windows[0].toSeconds = 605), reversing())).toEqual([]);
  });

  it("may not be twice as many one way as the other", () => {
    const [problem] = problemsOf((e) => {
      e.windows[0] = { setpoint: "600", fromSeconds: 0, toSeconds: 29 };
    }, reversing());
    expect(problem?.message).toContain("2 forward and 1 reversed");
  });
});

describe("sheaths", () => {
  it("platinum alone needs none", () => {
    const evidence = buildEvidence({ sensors: ["S", "R"] });
    expect(
      problemsOf((e) => {
        for (const sensor of e.sensors) sensor.protection = "bare-wire";
      }, evidence),
    ).toEqual([]);
  });

  it("platinum beside a metal sheath in a block needs one, in a bare tube not", () => {
    const spoil = (kind: string) => (e: Loose) => {
      e.configuration.kind = kind;
      e.sensors[0].protection = "metal-sheath";
      e.sensors[0].type = "S";
      e.references[0].protection = "other";
      e.sensors[0].protection = "metal-sheath";
    };
    const evidence = buildEvidence({ sensors: ["S", "S"] });
    const paths = problemsOf(spoil("equalising-block"), evidence).map(({ path }) => path);
    expect(paths).toContain("references[0].protection");
    expect(problemsOf(spoil("bare-tube"), evidence)).toEqual([]);
  });
});

describe("evidence without any uncertainty", () => {
  it("is refused: a result without uncertainty is none", () => {
    const zero = { kind: "zero", reason: "r" };
    const problems = problemsOf((e) => {
      e.referenceRepeatability = zero;
      e.configuration.characterisation.uniformity = zero;
      for (const r of e.references)
        Object.assign(r, { calibrationUncertainty: zero, drift: zero, inhomogeneity: zero });
      for (const s of e.sensors) Object.assign(s, { repeatability: zero, inhomogeneity: zero, lead: zero });
      Object.assign(e.voltmeter, { calibrationUncertainty: zero, drift: zero, resolution: zero });
      e.scanner.parasitic = zero;
      e.junctions[0].uncertainty = zero;
    });
    expect(problems[0]?.message).toContain("without uncertainty");
  });

  it("and so is less than one degree of freedom", () => {
    const problems = problemsOf((e) => {
      e.sensors[0].repeatability = {
        kind: "standard",
        standard: 500,
        unit: "microvolt",
        degreesOfFreedom: 0.5,
        source: "x",
      };
    });
    expect(problems).toEqual([
      { path: "sensors[0]", message: expect.stringContaining("effective degrees of freedom: at least 1") },
    ]);
  });
});

describe("what is not evidence at all", () => {
  it.each([null, undefined, 7, "text", [], {}, [1, 2]])("%j has problems and throws nothing", (input) => {
    const outcome = evaluateEvidence(input);
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.problems.length).toBeGreaterThan(0);
  });

  it("one problem for a reference beyond its certificate, however many sensors it serves", () => {
    const problems = problemsOf((e) => (e.references[0].correction.points[1].celsius = 590));
    expect(problems).toHaveLength(1);
  });
});
