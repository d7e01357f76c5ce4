import { describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import { lineDecidability } from "@/lib/domain/order/decidability";
import { expectedUncertainty } from "@/lib/domain/order/expected-uncertainty";
import { type Bench, idealRun, referencesFor } from "@/lib/domain/order/ideal-run";
import { decidability } from "@/lib/metrology/conformity/decidability";
import { inventedBench, withTwentyPercentRule } from "./bench";

const bench = inventedBench();
const cautious = withTwentyPercentRule(bench);
const k = (celsius: number) => ({ typeLetter: "K", protection: "metal-sheath", celsius }) as const;

const expectedAt = (where: Bench, celsius: number) => {
  const expected = expectedUncertainty([where], k(celsius));
  if (expected.kind === "unknown") throw new Error(expected.reason);
  return expected;
};
const reasonOf = (...args: Parameters<typeof expectedUncertainty>) => {
  const expected = expectedUncertainty(...args);
  return expected.kind === "unknown" ? expected.reason : null;
};

describe("the U that a point can be expected to have", () => {
  it("K at 1000 °C by the 20 % rule: about 1.8 °C, and ± 1 °C guarded is not decidable", () => {
    const expected = expectedAt(cautious, 1000);
    expect(expected.expandedCelsius).toBeGreaterThan(1.7);
    expect(expected.expandedCelsius).toBeLessThan(2);
    expect(expected.dominant).toBe("Sensor inhomogeneity");
    const guarded = { kind: "guarded", guardBandRatio: 1 } as const;
    const one = decidability(1, guarded, expected);
    expect(one.ok && one.value.kind).toBe("not-decidable");
    const four = decidability(4, guarded, expected);
    expect(four.ok && four.value.kind).toBe("decidable");
  });

  it("is what the evaluation of a run without error gives, and that run has no error", () => {
    const run = idealRun(bench, referencesFor(bench, 1000), k(1000));
    const outcome = evaluateEvidence(run);
    if (!outcome.ok) throw new Error(outcome.problems[0]?.message);
    const [point] = outcome.evaluation.points;
    if (point?.state !== "measured") throw new Error("not measured");
    expect(point.errorCelsius).toBeCloseTo(0, 6);
    expect(point.references).toHaveLength(2);
    const expected = expectedAt(bench, 1000);
    expect(expected.expandedCelsius).toBe(point.expandedCelsius);
    expect(expected.standardUncertaintyCelsius * point.coverageFactor).toBeCloseTo(point.expandedCelsius, 9);
    expect(expected.configuration).toBe("Tube furnace, Bundle");
  });

  it("stays the same with voltmeter corrections, a warm junction and deviating references: those move values", () => {
    const moved = inventedBench({
      voltmeter: {
        ...bench.voltmeter,
        corrections: [
          { microvolt: 0, correctionMicrovolt: 2 },
          { microvolt: 50_000, correctionMicrovolt: 4 },
        ],
      },
      references: bench.references.map((reference) => ({
        ...reference,
        correction: {
          kind: "points" as const,
          points: [
            { celsius: 250, deviationMicrovolt: 3 },
            { celsius: 1150, deviationMicrovolt: 9 },
          ],
        },
      })),
    });
    expect(expectedAt(moved, 700).expandedCelsius).toBeCloseTo(expectedAt(bench, 700).expandedCelsius, 3);
  });

  it("takes a shorted channel where the procedure asks for one", () => {
    const zero = { kind: "shorted-channel", channel: "199" } as const;
    const budget = { ...bench.budget, comparison: { ...bench.budget.comparison, zero } };
    expect(expectedAt(inventedBench({ budget }), 700).expandedCelsius).toBeCloseTo(
      expectedAt(bench, 700).expandedCelsius,
      9,
    );
  });

  it("of several configurations is the smallest", () => {
    const uniformity = { kind: "rectangular", halfWidth: 3, unit: "celsius", source: "invented" } as const;
    const { configuration } = bench;
    const worse = inventedBench({
      configuration: {
        ...configuration,
        name: "Worse",
        characterisation: { ...configuration.characterisation, uniformity },
      },
    });
    const both = [expectedUncertainty([worse, bench], k(600)), expectedUncertainty([bench, worse], k(600))];
    expect(both[0]).toEqual(both[1]);
    expect(both[0]).toEqual(expectedAt(bench, 600));
    expect(expectedAt(worse, 600).expandedCelsius).toBeGreaterThan(3);
    expect(expectedAt(worse, 600).dominant).toBe("Furnace non-uniformity");
  });

  it("says why none can be expected", () => {
    expect(reasonOf([], k(600))).toContain("No furnace configuration");
    expect(reasonOf([bench], k(1250))).toContain("No furnace configuration");
    expect(reasonOf([bench], k(200))).toBe("No reference in service is certified at this temperature.");
    expect(reasonOf([bench], { ...k(600), typeLetter: "C" })).toContain("has no budget for type C");
    const bare = inventedBench({
      references: bench.references.map((one) => ({ ...one, protection: "bare-wire" as const })),
    });
    expect(reasonOf([bare], k(600))).toContain("without its own closed alumina sheath");
    const hot = inventedBench({ maximumCelsius: 1500, references: [] });
    expect(reasonOf([hot], k(1400))).toContain("No reference");
    const wide = inventedBench({
      maximumCelsius: 1500,
      references: bench.references.map((one) => ({
        ...one,
        correction: {
          kind: "polynomial" as const,
          coefficientsMicrovolt: [0],
          fromCelsius: 0,
          toCelsius: 1500,
        },
      })),
    });
    expect(reasonOf([wide], k(1400))).toContain("not defined at this temperature");
    const means = { kind: "block-means", blockSeconds: 60, source: "own readings" } as const;
    const inputs = bench.budget.sensors.K;
    if (!inputs) throw new Error("no inputs");
    const ofRun = inventedBench({
      budget: {
        ...bench.budget,
        sensors: { ...bench.budget.sensors, K: { ...inputs, repeatability: means } },
      },
    });
    expect(reasonOf([ofRun], k(600))).toContain("not there yet");
    expect(
      reasonOf([inventedBench({ budget: { ...bench.budget, referenceRepeatability: means } })], k(600)),
    ).toContain("not there yet");
  });

  it("prefers references in their own sheath", () => {
    const [one, two] = bench.references;
    if (!one || !two) throw new Error("two references");
    const naked = { ...one, id: "R0", protection: "bare-wire" as const };
    const chosen = referencesFor(inventedBench({ references: [naked, one, two] }), 600);
    expect(chosen.map(({ id }) => id)).toEqual(["R1", "R2"]);
    expect(referencesFor(inventedBench({ references: [naked] }), 600)).toHaveLength(1);
  });
});

const line = {
  position: 1,
  typeLetter: "K",
  temperatureUnit: "C",
  setpoints: [{ typed: "1000", celsius: 1000 }],
  tolerance: "1",
} as const;
const guarded = { kind: "guarded", guardBandRatio: 1 } as const;
const known = (expandedCelsius: number) => () =>
  ({
    kind: "expected",
    standardUncertaintyCelsius: expandedCelsius / 2,
    expandedCelsius,
    degreesOfFreedom: null,
    dominant: "Sensor inhomogeneity",
    configuration: "Tube furnace, Bundle",
  }) as const;

describe("what can be said at each setpoint of a line", () => {
  it("with the laboratory's own budget and the 20 % rule", () => {
    const [point] = lineDecidability(line, guarded, (celsius) => expectedUncertainty([cautious], k(celsius)));
    expect(point).toMatchObject({ state: "decidable", setpoint: "1000 °C", position: 1, help: [] });
    expect(point?.sentence).toMatch(
      /^Type K at 1000 °C, class 1 \(± 4 °C\), guarded acceptance: decidable; U about 1\.[789] °C$/,
    );
  });

  it("names what would help where it is not decidable", () => {
    const [point] = lineDecidability(line, guarded, known(4.5));
    expect(point).toEqual({
      position: 1,
      setpoint: "1000 °C",
      state: "not-decidable",
      expected: "about 4.5 °C",
      sentence: "Type K at 1000 °C, class 1 (± 4 °C), guarded acceptance: not decidable; U about 4.5 °C",
      help: [
        "class 2 (± 7.5 °C), which would be decidable",
        "a U below 4.0 °C: most of it now comes from “Sensor inhomogeneity” (Tube furnace, Bundle)",
        "a guard band of less than 0.89 × U, or simple acceptance, if the customer agrees to the risk",
      ],
    });
    const [none] = lineDecidability(line, guarded, known(9));
    expect(none?.help).toHaveLength(2);
  });

  it("judges by ASTM E230, by the customer's own limit and by every rule", () => {
    const one = (change: object, rule: Parameters<typeof lineDecidability>[1] = guarded, u = 1) =>
      lineDecidability({ ...line, ...change }, rule, known(u))[0];
    // E230, type K at 1000 °C: standard 0.75 % = 7.5 °C, special 0.4 % = 4 °C; no tolerance past 1260 °C.
    expect(one({ tolerance: "astm-special" })?.sentence).toBe(
      "Type K at 1000 °C, ASTM E230/E230M special tolerances (± 4 °C), guarded acceptance: decidable; U about 1.0 °C",
    );
    expect(one({ tolerance: "astm-special" }, guarded, 4.5)?.help[0]).toBe(
      "standard tolerances (± 7.5 °C), which would be decidable",
    );
    const beyond = { tolerance: "astm-standard", setpoints: [{ typed: "1300", celsius: 1300 }] };
    expect(one(beyond)?.state).toBe("no-tolerance-defined");
    const own = { tolerance: "own", ownLimit: 1.5 };
    expect(one(own)?.sentence).toContain("own limit (± 1.5 °C), guarded acceptance: decidable");
    expect(one(own, guarded, 2)).toMatchObject({ state: "not-decidable" });
    expect(one(own, guarded, 2)?.help[0]).toBe("a limit wider than ± 2.0 °C");
    expect(one({ ...own, temperatureUnit: "F", ownLimit: 5 })?.sentence).toContain("own limit (± 5 °F)");
    expect(one(own, { kind: "guarded-binary", guardBandRatio: 1 }, 2)?.sentence).toContain(
      "guarded acceptance, pass or fail: not decidable",
    );
    // u = 1 °C: even without error 13.4 % lie beyond ± 1.5 °C, 2·Φ(−1.5): no zone for 5 %, one for 20 %.
    const risk = { kind: "target-risk", falseAcceptance: 0.05, isBinary: true } as const;
    expect(one(own, risk, 2)?.state).toBe("not-decidable");
    expect(one(own, risk, 2)?.help.at(-1)).toContain("a larger risk of false acceptance");
    expect(one(own, { ...risk, falseAcceptance: 0.2 }, 2)?.state).toBe("decidable");
  });

  it("gives a digit more where rounded figures would be the same", () => {
    const own = { ...line, tolerance: "own", temperatureUnit: "F", ownLimit: 2 } as const;
    const [point] = lineDecidability(own, guarded, known(2.02 / 1.8));
    expect(point?.expected).toBe("about 2.02 °F");
    expect(point?.sentence).toContain("not decidable; U about 2.02 °F");
    expect(point?.help.slice(0, 2)).toEqual([
      "a limit wider than ± 2.02 °F",
      expect.stringMatching(/^a U below 2\.00 °F:/),
    ]);
    // The very limit itself stays as it is written.
    expect(lineDecidability(own, guarded, known(2 / 1.8))[0]?.help[0]).toBe("a limit wider than ± 2.0 °F");
  });

  it("speaks the customer's unit", () => {
    const fahrenheit = {
      ...line,
      temperatureUnit: "F",
      setpoints: [{ typed: "+600", celsius: 2840 / 9 }],
    } as const;
    const [point] = lineDecidability(fahrenheit, guarded, known(1));
    expect(point?.sentence).toBe(
      "Type K at 600 °F, class 1 (± 2.7 °F), guarded acceptance: decidable; U about 1.8 °F",
    );
  });

  it("says when a class ends, when nothing is asked, and when no U is known", () => {
    const states = (change: object, rule: Parameters<typeof lineDecidability>[1], u = known(1)) =>
      lineDecidability({ ...line, ...change }, rule, u).map(({ state, sentence }) => [state, sentence]);
    expect(states({ setpoints: [{ typed: "1100", celsius: 1100 }] }, guarded)).toEqual([
      ["no-tolerance-defined", "Type K at 1100 °C, class 1: no tolerance defined; U about 1.0 °C"],
    ]);
    expect(states({ tolerance: "none" }, guarded)[0]?.[0]).toBe("no-question");
    expect(states({}, { kind: "none" })[0]).toEqual([
      "no-question",
      "Type K at 1000 °C, class 1 (± 4 °C): asked for, but no decision rule is agreed, so nothing would be stated; U about 1.0 °C",
    ]);
    expect(states({ tolerance: "none" }, { kind: "none" })[0]?.[1]).toContain(
      "no statement of conformity is asked",
    );
    const past = { tolerance: "astm-special", setpoints: [{ typed: "1300", celsius: 1300 }] };
    expect(states(past, { kind: "none" })[0]?.[0], "shows before a rule is agreed").toBe(
      "no-tolerance-defined",
    );
    expect(states({}, { kind: "simple" }, known(99))[0]?.[0]).toBe("decidable");
    const [lost] = lineDecidability(line, guarded, () => ({ kind: "unknown", reason: "No reference." }));
    expect(lost).toMatchObject({
      state: "unknown",
      expected: "",
      sentence:
        "Type K at 1000 °C, class 1 (± 4 °C), guarded acceptance; what U to expect is not known: No reference.",
    });
    const [odd] = lineDecidability(line, { kind: "guarded", guardBandRatio: -1 }, known(1));
    expect(odd?.state).toBe("unknown");
  });
});
