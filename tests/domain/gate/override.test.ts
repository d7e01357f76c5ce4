import { describe, expect, it } from "vitest";
import { decideOverride } from "@/lib/domain/gate/decide-override";
import { decideStart } from "@/lib/domain/gate/decide-start";
import { defaultGatePolicy } from "@/lib/domain/gate/default-policy";
import { neverOverridable } from "@/lib/domain/gate/never-overridable";
import { GatePolicy } from "@/lib/domain/gate/policy";
import type { Role } from "@/lib/domain/staff/roles";
import { assessed, rowsOf, sensor, withBench, withBuild } from "./plan-of";

const said = (
  assessment: ReturnType<typeof assessed>,
  code: string,
  subjects: readonly string[],
  reason = "agreed by N. North on 12 October",
  roles: readonly Role[] = ["signatory"],
) => {
  const result = decideOverride(assessment, { code, subjects, reason }, roles);
  return result.ok ? result.value : { ...result.refusal };
};
const used = assessed(withBuild({ isUsed: true }));

describe("a reason that sets a row aside", () => {
  it("is taken from whom the policy names, and says whether the certificate has to carry it", () => {
    expect(said(used, "used-base-metal", ["T-1"])).toEqual({
      code: "used-base-metal",
      subjects: ["T-1"],
      reason: "agreed by N. North on 12 October",
      reachesCertificate: true,
    });
    const other = assessed({
      otherRuns: [{ run: "R-0", scanner: "SC-1", configurationId: "x", channels: ["102"] }],
    });
    expect(said(other, "channel-in-another-run", ["102"], "its load is out", ["technician"])).toMatchObject({
      reachesCertificate: false,
    });
  });

  it("is not taken from anybody else", () => {
    expect(said(used, "used-base-metal", ["T-1"], undefined, ["technician"])).toMatchObject({
      code: "not-permitted",
      message: expect.stringMatching(/Only signatory or quality manager/),
    });
  });

  it("has to be a sentence", () => {
    expect(said(used, "used-base-metal", ["T-1"], "  ok      ")).toMatchObject({
      code: "invalid",
      fields: { reason: expect.stringMatching(/Say why/) },
    });
  });

  it("stands for many at once, and for some of them", () => {
    const two = assessed({
      sensors: ["T-1", "T-2"].map((tag) => ({ ...sensor, tag, build: { ...sensor.build, isUsed: true } })),
    });
    expect(said(two, "used-base-metal", ["T-1", "T-2"])).toMatchObject({ subjects: ["T-1", "T-2"] });
    expect(said(two, "used-base-metal", ["T-2"])).toMatchObject({ subjects: ["T-2"] });
    expect(said(two, "used-base-metal", ["T-3"])).toMatchObject({ code: "wrong-state" });
    expect(said(two, "used-base-metal", [])).toMatchObject({ code: "wrong-state" });
  });

  it("stands for the run where the row does", () => {
    const cold = assessed(withBench({ warmUpHours: null }));
    expect(said(cold, "warm-up", [])).toMatchObject({ subjects: [] });
    expect(said(cold, "warm-up", ["T-1"])).toMatchObject({ code: "wrong-state" });
  });

  it("is never taken against a refusal, whoever gives it", () => {
    const all: readonly Role[] = ["technician", "signatory", "quality-manager"];
    const lead = assessed(withBuild({ leadInsulation: "ptfe", lengthMillimetre: 420 }));
    expect(said(lead, "lead-near-heat", ["T-1"], undefined, all)).toMatchObject({
      code: "rule",
      message: expect.stringMatching(/No reason sets this aside.*toxic/),
    });
    const late = assessed({ voltmeter: null });
    expect(said(late, "voltmeter-in-date", [], undefined, all)).toMatchObject({ code: "rule" });
  });

  it("is not needed for a warning or for what is met", () => {
    const { isUsed: _left, ...build } = sensor.build;
    const unknown = assessed({ sensors: [{ ...sensor, build }] });
    expect(said(unknown, "use-not-stated", ["T-1"])).toMatchObject({ code: "wrong-state" });
    expect(said(unknown, "exposure", [])).toMatchObject({ code: "wrong-state" });
  });
});

describe("starting the run", () => {
  const start = (assessment: ReturnType<typeof assessed>, state = "planned") => {
    const result = decideStart({ number: "R-1", state }, assessment);
    return result.ok ? result.value : result.refusal.message;
  };

  it("goes through once the gate has nothing left, and only once", () => {
    expect(start(assessed())).toBe("start");
    expect(start(assessed(), "measuring")).toMatch(/its gate lies behind it/);
  });

  it("names all that stands in the way: first what must be mended, then what lacks its reason", () => {
    const cold = withBench({ warmUpHours: null, shortedZeroMicrovolt: null });
    expect(start(assessed({ ...cold, voltmeter: null }))).toMatch(/does not start: Choose a voltmeter/);
    expect(start(assessed(cold))).toMatch(
      /mended, or has its reason:.*have been|has recorded today.*shorted zero/,
    );
  });
});

describe("the policy", () => {
  const parsed = (overrides: unknown) => GatePolicy.safeParse({ ...defaultGatePolicy, overrides });

  it("is valid as it comes, every figure with its source", () => {
    expect(GatePolicy.parse(defaultGatePolicy)).toEqual(defaultGatePolicy);
    expect(
      GatePolicy.safeParse({ ...defaultGatePolicy, warmUpHours: { value: 1, source: "" } }).success,
    ).toBe(false);
  });

  it.each([...neverOverridable])("cannot open %s to a reason", (code) => {
    const result = parsed([{ code, by: ["quality-manager"], reachesCertificate: true }]);
    expect(result.error?.issues[0]).toMatchObject({ path: ["overrides", 0, "code"] });
  });

  it("names a code once", () => {
    const [first] = defaultGatePolicy.overrides;
    expect(parsed([first, first]).error?.issues[0]?.message).toMatch(/twice/);
  });

  it("may ask more or less of the bench than it comes with", () => {
    const stricter = rowsOf(assessed()).filter(({ severity }) => severity !== "ok");
    expect(stricter).toEqual([]);
  });
});
