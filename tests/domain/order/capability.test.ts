import { describe, expect, it } from "vitest";
import {
  type CapabilityLine,
  capabilitySummary,
  orderCapability,
  outsideScopePoints,
  undecidablePoints,
} from "@/lib/domain/order/capability";
import { readTypedLines, readTypedRule } from "@/lib/domain/order/typed-lines";
import { inventedBench, withTwentyPercentRule } from "./bench";

const furnaces = [{ name: "Tube furnace 1", minimumCelsius: 300, maximumCelsius: 1200 }];
const bench = withTwentyPercentRule(inventedBench());
const guarded = { kind: "guarded", guardBandRatio: 1 } as const;
const setpoints = (...celsius: number[]) =>
  celsius.map((value) => ({ typed: String(value), celsius: value }));
const line: CapabilityLine = {
  position: 1,
  typeLetter: "K",
  protection: "metal-sheath",
  temperatureUnit: "C",
  tolerance: "own",
  ownLimit: 1,
  setpoints: setpoints(1000),
};
const scopeTo = (toCelsius: number) => [
  {
    type: "K" as const,
    fromCelsius: 0,
    toCelsius,
    expandedCelsius: 1,
    source: "invented schedule",
  },
];
const ask = (more: Partial<CapabilityLine>, sources: Partial<Parameters<typeof orderCapability>[2]> = {}) =>
  orderCapability([{ ...line, ...more }], guarded, {
    benches: [bench],
    furnaces,
    scope: undefined,
    ...sources,
  });

describe("what the platform answers of a line", () => {
  it("type K at 1000 °C within 1 °C by guarded acceptance: can be done, not decidable, and what would help", () => {
    const [answer] = ask({});
    expect(answer).toMatchObject({ can: "yes", why: "", state: "not-decidable", setpoint: "1000 °C" });
    expect(answer?.expected).toMatch(/^about 1\.[89] °C$/);
    expect(answer?.help.length).toBeGreaterThan(1);
  });

  it("answers in the customer's unit", () => {
    const fahrenheit = { temperatureUnit: "F", setpoints: [{ typed: "1832", celsius: 1000 }] } as const;
    const [answer] = ask({ ...fahrenheit, ownLimit: 1.8 }, { scope: scopeTo(1200) });
    expect(answer).toMatchObject({ setpoint: "1832 °F", scope: { state: "inside", capability: "1.8 °F" } });
    expect(answer?.expected).toMatch(/^about 3\.\d °F$/);
    expect(answer?.help.join()).not.toContain("°C)");
  });

  it("says why a point cannot be done: no furnace, or nothing characterised and calibrated there", () => {
    expect(ask({ setpoints: setpoints(1201) })[0]).toMatchObject({
      can: "no",
      why: expect.stringContaining("No furnace"),
    });
    expect(ask({ setpoints: setpoints(1200) }, { benches: [] })[0]).toMatchObject({
      can: "no",
      why: expect.stringContaining("No furnace configuration with a characterisation"),
    });
    expect(ask({ setpoints: setpoints(1160) })[0]).toMatchObject({
      can: "no",
      why: expect.stringContaining("No reference in service"),
    });
  });

  it("answers nothing for work done elsewhere", () => {
    const site = { performedAt: "customer-site", providerId: null } as const;
    expect(ask({ marks: site })[0]).toMatchObject({ can: "elsewhere", why: expect.stringContaining("site") });
    const away = { performedAt: "laboratory", providerId: "p" } as const;
    expect(ask({ marks: away })[0]).toMatchObject({ why: expect.stringContaining("Subcontracted") });
    // A provider's points carry neither our U nor our scope.
    expect(ask({ marks: away }, { scope: scopeTo(900) })[0]).toMatchObject({
      ...{ expected: "", state: "unknown", scope: { state: "not-stated", capability: "" } },
    });
    expect(ask({ marks: { ...away, providerId: null } })[0]).toMatchObject({ can: "yes" });
  });

  it("counts what the customer should hear of", () => {
    const answers = ask({ setpoints: setpoints(600, 1000, 1201) }, { scope: scopeTo(900) });
    expect(outsideScopePoints(answers)).toEqual(["Line 1: 1000 °C", "Line 1: 1201 °C"]);
    expect(undecidablePoints(answers)).toContain("Line 1: 1000 °C");
    expect(capabilitySummary(answers)).toBe(
      `2 of 3 points can be done here; 2 outside the scope; ${undecidablePoints(answers).length} not decidable.`,
    );
    expect(capabilitySummary([])).toBe("");
    const away = ask({ tolerance: "none", marks: { performedAt: "laboratory", providerId: "p" } });
    expect(capabilitySummary(away)).toBe("0 of 1 point can be done here; 1 elsewhere.");
  });
});

describe("lines that are still being typed", () => {
  const typed = {
    ...{ typeLetter: "K", protection: "metal-sheath", temperatureUnit: "F", setpoints: "600 1832" },
    ...{ tolerance: "own", ownLimit: "5", performedAt: "laboratory", providerId: "" },
  };
  it("are read as far as they go, and keep their place in the form", () => {
    const read = readTypedLines([{ ...typed, setpoints: "9oo" }, { ...typed, setpoints: "" }, typed]);
    expect(read).toMatchObject([{ position: 3, ownLimit: 5, setpoints: [{}, { celsius: 1000 }] }]);
    for (const gap of [{ typeLetter: "Q" }, { protection: "" }, { temperatureUnit: "K" }])
      expect(readTypedLines([{ ...typed, ...gap }])).toEqual([]);
    expect(readTypedLines([{ ...typed, ownLimit: "-5", tolerance: "?" }])).toMatchObject([
      { ownLimit: null, tolerance: "none" },
    ]);
  });

  it("ask nothing by a rule without its figure", () => {
    expect(readTypedRule({ decisionRule: "guarded", guardBandRatio: "1" })).toEqual(guarded);
    expect(readTypedRule({ decisionRule: "guarded", guardBandRatio: "0" })).toMatchObject({
      guardBandRatio: 0,
    });
    expect(readTypedRule({ decisionRule: "guarded", guardBandRatio: "" })).toEqual({ kind: "none" });
    expect(readTypedRule({})).toEqual({ kind: "none" });
  });
});
