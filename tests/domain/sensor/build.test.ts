import { describe, expect, it } from "vitest";
import { readBuild, SensorBuild } from "@/lib/domain/sensor/build";
import { BuildDraft, buildLines, buildOf } from "@/lib/domain/sensor/build-draft";
import { decideBuild } from "@/lib/domain/sensor/decide-build";

const typed = (more: object) => buildOf(BuildDraft.parse(more));

describe("a sensor's build", () => {
  it("is what was stated and nothing else: an empty field is never nought, and new is not used", () => {
    expect(typed({})).toEqual({});
    expect(typed({ wireMillimetre: "", sheath: "", use: "" })).toEqual({});
    expect(
      typed({
        sheath: "mineral-insulated",
        sheathMillimetre: "3",
        lengthMillimetre: "500.5",
        leadInsulation: "ptfe",
        use: "new",
        highestUsedCelsius: "0",
      }),
    ).toEqual({
      sheath: "mineral-insulated",
      sheathMillimetre: 3,
      lengthMillimetre: 500.5,
      leadInsulation: "ptfe",
      isUsed: false,
      highestUsedCelsius: 0,
    });
  });

  it("is stored whole and read back whole; what nobody of ours wrote is a fault", () => {
    const build = typed({ use: "used", leadInsulation: "bare" });
    expect(readBuild(JSON.stringify(build))).toEqual(build);
    expect(readBuild("{}")).toEqual({});
    expect(() => readBuild('{"lead":"ptfe"}')).toThrow();
    expect(SensorBuild.safeParse({ lengthMillimetre: 0 }).success).toBe(false);
  });

  it.each([{ lengthMillimetre: "5 cm" }, { wireMillimetre: "0" }, { leadInsulation: "rubber" }])(
    "refuses %o",
    (more) => {
      expect(BuildDraft.safeParse(more).success).toBe(false);
    },
  );

  it("has a line for every field", () => {
    const whole = typed({
      wireMillimetre: "1",
      sheath: "tube",
      sheathMillimetre: "6",
      sheathMaterial: "alumina",
      lengthMillimetre: "600",
      leadInsulation: "bare",
      use: "used",
      highestUsedCelsius: "900",
      deepestUsedMillimetre: "300",
      wireInsulation: "ceramic-beads",
      leadMillimetre: "1500",
      connector: "miniature-plug",
      lot: "H-77",
      roll: "12",
      end: "second",
      usedHours: "400",
      usedIn: "endothermic gas",
    });
    // That its history is not known stands in the line of its earlier use.
    expect(buildLines(whole)).toHaveLength(Object.keys(SensorBuild.shape).length - 1);
    expect(typed({ use: "not-known" })).toEqual({ isHistoryUnknown: true });
    expect(buildLines({ isHistoryUnknown: true }).map(({ value }) => value)).toContain(
      "Asked, and not known",
    );
    expect(buildLines(whole).filter(({ value }) => value === "")).toEqual([]);
    expect(buildLines({}).filter(({ value }) => value !== "")).toEqual([]);
  });
});

describe("stating it anew", () => {
  const before = typed({ leadInsulation: "ptfe" });
  const after = typed({ leadInsulation: "bare" });
  const sensor = { tag: "T-1", state: "received", hasPassedGate: false } as const;
  const said = (result: ReturnType<typeof decideBuild>) =>
    result.ok ? result.value : result.refusal.message;

  it("says what changed", () => {
    expect(said(decideBuild(sensor, before, after))).toEqual([
      "Lead insulation: PTFE or PFA, now Bare tails",
    ]);
    expect(said(decideBuild({ ...sensor, state: "loaded" }, {}, after))).toHaveLength(1);
  });

  it("is refused with nothing new, behind the gate, and once it was measured", () => {
    expect(said(decideBuild(sensor, before, before))).toMatch(/Nothing differs/);
    expect(said(decideBuild({ ...sensor, hasPassedGate: true }, before, after))).toMatch(/gate is passed/);
    expect(said(decideBuild({ ...sensor, state: "measured" }, before, after))).toMatch(
      /stands with its results/,
    );
  });
});
