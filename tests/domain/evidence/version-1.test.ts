import { describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import s5 from "@/lib/domain/evidence/examples/ea4-02-s5.json";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { buildEvidence } from "./build-evidence";
import { measured } from "./measured";

/** The invented run as a writer of version 1 would have written it. */
// biome-ignore lint/suspicious/noExplicitAny: an older file is not of today's type
function asVersion1(evidence: EvidenceInput): any {
  const {
    heaterPickup: _p,
    stability: _s,
    correlation: _c,
    comparison: _k,
    coverage: _v,
    ...rest
  } = evidence;
  const { axial: _a, radial: _r, gradient: _g, ...characterisation } = rest.configuration.characterisation;
  return {
    ...rest,
    version: 1,
    configuration: { ...rest.configuration, characterisation },
    sensors: rest.sensors.map(({ immersion: _i, shunting: _h, hysteresis: _y, ...sensor }) => sensor),
    junctions: rest.junctions.map(({ spread: _d, ...junction }) => junction),
    references: rest.references.map(({ correction, interpolation: _t, ...reference }) => ({
      ...reference,
      deviations: correction.kind === "points" ? correction.points : [],
    })),
  };
}

describe("a file of version 1", () => {
  it("gives the numbers of version 2 with the new lines at zero and no correlation", () => {
    const evidence = buildEvidence({ errorCelsius: 0.7, junctionCelsius: 22 });
    const numbers = (input: EvidenceInput) =>
      measured(input).map((p) => [
        p.emfAtNominalMicrovolt,
        p.combinedMicrovolt,
        p.degreesOfFreedom,
        p.expandedCelsius,
      ]);
    expect(numbers(asVersion1(evidence))).toEqual(numbers(evidence));
  });

  it("says of each line it did not know that it was not stated", () => {
    const [point] = measured(asVersion1(buildEvidence({ sensors: ["K"] })));
    const lines = [
      ...(point?.temperatureBudget.contributions ?? []),
      ...(point?.emfBudget.contributions ?? []),
    ];
    const unstated = lines.filter(({ source }) =>
      source.includes("not stated in an evidence file of version 1"),
    );
    expect(unstated.map(({ key }) => key)).toEqual([
      "heater.pickup@reference",
      "junction.spread@reference",
      "reference.interpolation",
      "furnace.axial",
      "furnace.radial",
      "furnace.gradient",
      "furnace.stability",
      "heater.pickup@sensor",
      "junction.spread@sensor",
      "sensor.immersion",
      "sensor.shunting",
      "sensor.hysteresis",
      "shared",
    ]);
    expect(point?.coverage.method).toBe("student");
  });

  it("refuses what it has no field for, and a field of version 2 with it", () => {
    const outcome = evaluateEvidence({ ...s5, heaterPickup: { kind: "zero", reason: "x" } });
    expect(outcome).toMatchObject({
      ok: false,
      problems: [{ message: expect.stringContaining("heaterPickup") }],
    });
  });

  it.each([
    [
      {
        deviations: [
          { celsius: 999, deviationMicrovolt: 0 },
          { celsius: 990, deviationMicrovolt: 0 },
        ],
      },
      "references[0].deviations[1].celsius",
    ],
    [{ singlePointReachCelsius: undefined }, "references[0].singlePointReachCelsius"],
    [{ singlePointReachCelsius: 0.1 }, "references[0].deviations"],
  ])("names the place in the file as it was given: %j", (change, path) => {
    const [first, second] = s5.references;
    const outcome = evaluateEvidence({ ...s5, references: [{ ...first, ...change }, second] });
    expect(outcome).toMatchObject({ ok: false, problems: [{ path }] });
  });
});
