import { describe, expect, it } from "vitest";
import type { CheckKey } from "@/lib/domain/calibration/acceptance-check";
import { assessCalibration } from "@/lib/domain/calibration/assess-calibration";
import type { CertificateFacts } from "@/lib/domain/calibration/certificate-facts";
import { calibrationOf, changed, facts, found } from "./certificate-facts-of";

const answers = (given: CertificateFacts) =>
  Object.fromEntries(assessCalibration(given).map(({ key, answer }) => [key, answer]));
const findingOf = (given: CertificateFacts, key: CheckKey) =>
  assessCalibration(given).find((one) => one.key === key)?.finding;
const yes = {
  identity: "yes",
  issuer: "yes",
  range: "yes",
  uncertainty: "yes",
  traceability: "yes",
  criterion: "yes",
};

describe("the questions a second person answers", () => {
  it("are all yes for a certificate that has nothing against it; serial numbers may be written differently", () => {
    expect(answers(facts)).toEqual(yes);
    expect(findingOf(facts, "criterion")).toBe(
      "Since certificate C-1 its deviation has changed, at 1000 °C, by 0.173 °C; its record allows ± 0.3 °C.",
    );
  });

  it.each<[string, CertificateFacts, Partial<Record<CheckKey, string>>]>([
    ["another serial number", changed({ itemSerial: "AB 12-4" }), { identity: "no" }],
    ["no serial number", changed({ itemSerial: "" }), { identity: "not-known" }],
    ["an issuer who is not approved", { ...facts, isIssuerApproved: false }, { issuer: "no" }],
    [
      "a range that is too short",
      { ...facts, requirement: { fromCelsius: 300, toCelsius: 1100 } },
      { range: "no", uncertainty: "not-known" },
    ],
    ["a range narrowed by the certificate", changed({ toCelsius: 900 }), { range: "no" }],
    ["nothing asked of it", { ...facts, requirement: {} }, { range: "not-known", uncertainty: "not-known" }],
    [
      "too large a U",
      { ...facts, requirement: { largestExpanded: 0.2, unit: "celsius" } },
      { uncertainty: "no", range: "not-known" },
    ],
    ["no statement of traceability", changed({ traceabilityStatement: "" }), { traceability: "no" }],
    ["an accredited laboratory without a number", changed({ accreditation: "" }), { traceability: "no" }],
    ["another route, and nobody said why", changed({ route: "other" }), { traceability: "no" }],
    ["a drift beyond the record", changed({ findings: found(-11) }), { criterion: "no" }],
    ["nothing before it", { ...facts, earlier: null }, { criterion: "not-known" }],
  ])("%s", (_, given, differing) => {
    expect(answers(given)).toEqual({ ...yes, ...differing });
  });

  it("hold an in-house calibration without a provider", () => {
    const inHouse = { ...changed({ route: "in-house", accreditation: "" }), isIssuerApproved: false };
    expect(answers(inHouse)).toEqual(yes);
  });

  it("compare a U in µV with a limit in °C by the smallest slope of its temperatures, and the other way round", () => {
    const inMicrovolt = { ...found(-9), expanded: 4, unit: "microvolt" as const };
    // Type S: 9.13 µV/°C at 300 °C.
    expect(findingOf(changed({ findings: inMicrovolt }), "uncertainty")).toMatch(
      /^U is 0\.438 °C; at most 0\.5/,
    );
    const limit = { ...facts, requirement: { largestExpanded: 3, unit: "microvolt" as const } };
    // 0.3 °C times 11.54 µV/°C at 1000 °C.
    expect(findingOf(limit, "uncertainty")).toMatch(/^U is 3\.46 µV; at most 3 µV/);
  });

  it("compare an equation with the points before it, where they have temperatures in common", () => {
    const equation = {
      kind: "polynomial" as const,
      terms: [{ coefficient: 0 }, { coefficient: -0.009 }],
      fromCelsius: 300,
      toCelsius: 1000,
    };
    const printed = changed({ findings: { ...found(0), points: [], equation } });
    expect(findingOf(printed, "criterion")).toMatch(/at 1000 °C, by 0\.173 °C/);
    const apart = {
      ...facts,
      earlier: calibrationOf(
        "C-1",
        { ...found(0), points: [{ celsius: 500, deviationMicrovolt: 0 }], singlePointReachCelsius: 5 },
        "2025-05-01",
      ),
    };
    expect(answers(apart).criterion).toBe("not-known");
  });
});

describe("our criterion for instruments is the figure of their budgets", () => {
  const of = (
    particulars: CertificateFacts["equipment"]["particulars"],
    findings: CertificateFacts["calibration"]["findings"],
    earlier: CertificateFacts["calibration"]["findings"] | null = null,
  ) =>
    answers({
      ...changed({ findings } as Partial<CertificateFacts["calibration"]>),
      equipment: { tag: "T", kind: particulars.kind, serial: "AB123", particulars },
      earlier: earlier && calibrationOf("C-1", earlier, "2025-05-01"),
    }).criterion;
  const voltmeter = {
    kind: "voltmeter",
    driftHalfWidthMicrovolt: 1,
    resolutionMicrovolt: 0.1,
    basis: "b",
  } as const;
  const corrections = (...values: [number, number][]) => ({
    kind: "voltmeter" as const,
    corrections: values.map(([microvolt, correctionMicrovolt]) => ({ microvolt, correctionMicrovolt })),
    expandedMicrovolt: 2,
    coverageFactor: 2,
    note: "",
  });

  it("drift of a voltmeter", () => {
    const before = corrections([0, 0.2], [10_000, 1]);
    expect(of(voltmeter, corrections([0, 0], [10_000, 1.9]), before)).toBe("yes");
    expect(of(voltmeter, corrections([0, 0], [10_000, 2.1]), before)).toBe("no");
    expect(of(voltmeter, corrections([20_000, 0]), before)).toBe("not-known");
    expect(of(voltmeter, before)).toBe("not-known");
  });

  it("parasitic emf of a scanner, temperature of a junction", () => {
    const scanner = { kind: "scanner", parasiticHalfWidthMicrovolt: 1, basis: "b" } as const;
    expect(of(scanner, { kind: "scanner", parasiticHalfWidthMicrovolt: 1, note: "" })).toBe("yes");
    expect(of(scanner, { kind: "scanner", parasiticHalfWidthMicrovolt: 1.1, note: "" })).toBe("no");
    const junction = { kind: "junction", celsius: 0, halfWidthCelsius: 0.05, basis: "b" } as const;
    const at = (celsius: number) =>
      of(junction, { kind: "junction", celsius, expandedCelsius: 0.04, coverageFactor: 2, note: "" });
    expect([at(-0.05), at(0.06)]).toEqual(["yes", "no"]);
  });
});
