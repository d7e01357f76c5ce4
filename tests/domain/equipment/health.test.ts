import { describe, expect, it } from "vitest";
import { thermometerCriterion } from "@/lib/domain/calibration/thermometer-criterion";
import { ThermometerFindings } from "@/lib/domain/calibration/thermometer-findings";
import { thermometerTemperature } from "@/lib/domain/calibration/thermometer-temperature";
import { driftAdvice, driftHistory } from "@/lib/domain/equipment/drift-history";
import { readEquipment } from "@/lib/domain/equipment/read-equipment";
import { recordGaps } from "@/lib/domain/equipment/record-gaps";
import { hoursBefore, referenceHealth } from "@/lib/domain/equipment/reference-health";
import { referenceUse } from "@/lib/domain/equipment/reference-use";
import { equipmentKinds } from "@/lib/domain/equipment/types";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";

// Invented figures.

describe("referenceUse", () => {
  it("counts what lies above 1000 °C, with straight lines between readings", () => {
    // One hour up through 1000 °C in its middle, two hours at 1100 °C, one hour down: 0.5 + 2 + 0.5 h.
    const use = referenceUse({
      seconds: [0, 3600, 10_800, 14_400],
      celsius: [900, 1100, 1100, 900],
    });
    expect(use).toEqual({ hoursInFurnace: 4, hoursAbove1000: 3, highestCelsius: 1100 });
    expect(referenceUse({ seconds: [0, 3600], celsius: [20, 999] })).toMatchObject({ hoursAbove1000: 0 });
    expect(referenceUse({ seconds: [0, 3600], celsius: [1000, 1000] })).toMatchObject({ hoursAbove1000: 1 });
    expect(referenceUse({ seconds: [0], celsius: [1100] })).toBeNull();
    expect(referenceUse({ seconds: [], celsius: [] })).toBeNull();
  });
});

describe("referenceHealth", () => {
  const use = (on: string, hoursAbove1000: number) => ({
    on,
    hoursInFurnace: 5,
    hoursAbove1000,
    highestCelsius: 1000 + hoursAbove1000,
  });
  const uses = [use("2026-01-10", 1), use("2026-02-10", 2), use("2026-03-10", 4)];

  it("sums ever, since the calibration, and since the last anneal", () => {
    const anneal = {
      id: 1,
      kind: "anneal" as const,
      happenedOn: "2026-03-01",
      outcome: "none" as const,
      summary: "x",
      figures: { kind: "anneal" as const, method: "furnace" as const, celsius: 1100, hours: 1 },
    };
    const health = referenceHealth(uses, [anneal], "2026-02-10");
    expect(health).toMatchObject({
      ever: { immersions: 3, hoursInFurnace: 15, hoursAbove1000: 7, highestCelsius: 1004 },
      sinceCalibration: { immersions: 2, hoursAbove1000: 6 },
      sinceAnneal: { immersions: 1, hoursAbove1000: 4 },
      anneals: 1,
    });
    expect(referenceHealth([], [], null)).toMatchObject({
      ever: { immersions: 0, highestCelsius: null },
      sinceCalibration: null,
      sinceAnneal: null,
    });
    expect(hoursBefore(uses, "2026-02-10")).toBe(1);
  });
});

describe("driftHistory", () => {
  const at = (celsius: number) => {
    const slope = seebeck(referenceFunctions.S, celsius);
    if (!slope.ok) throw new Error("no slope");
    return slope.value;
  };
  const calibrated = (performedOn: string, hours: number, at300: number, at1100: number) => ({
    certificate: `C-${performedOn}`,
    performedOn,
    hours,
    findings: {
      kind: "reference" as const,
      points: [
        { celsius: 300, deviationMicrovolt: at300 },
        { celsius: 1100, deviationMicrovolt: at1100 },
      ],
      expanded: 0.4,
      coverageFactor: 2,
      unit: "celsius" as const,
      note: "",
    },
  });
  const history = [
    calibrated("2023-01-01", 0, 0, 0),
    calibrated("2024-01-01", 100, -1, -at(1100) * 0.1),
    calibrated("2025-01-01", 200, -2, -at(1100) * 0.2),
    calibrated("2026-01-01", 300, -3, -at(1100) * 0.3),
  ];

  it("tells the change at common temperatures as a temperature, each with its U", () => {
    const [low, high] = driftHistory("S", history);
    expect(low?.points.map(({ changeCelsius }) => changeCelsius)).toEqual([
      0,
      -1 / at(300),
      -2 / at(300),
      -3 / at(300),
    ]);
    expect(high?.points[3]).toMatchObject({ hours: 300, expandedCelsius: 0.4 });
    expect(high?.points[3]?.changeCelsius).toBeCloseTo(-0.3, 12);
    const microvolt = history.map((one) => ({
      ...one,
      findings: { ...one.findings, unit: "microvolt" as const, expanded: 2 },
    }));
    expect(driftHistory("S", microvolt)[1]?.points[0]?.expandedCelsius).toBeCloseTo(2 / at(1100), 12);
  });

  it("compares nothing beyond a certificate's range, and nothing with one certificate alone", () => {
    const narrow = {
      ...history[0]!,
      findings: {
        ...history[0]!.findings,
        points: [{ celsius: 300, deviationMicrovolt: 0 }],
        singlePointReachCelsius: 20,
      },
    };
    expect(driftHistory("S", [narrow, history[1]!]).map(({ celsius }) => celsius)).toEqual([300]);
    expect(driftHistory("S", history.slice(0, 1))).toEqual([]);
  });

  it("advises a rate by year and by hours, and an interval that ends with the drift allowed", () => {
    const high = driftHistory("S", history)[1]!;
    const advice = driftAdvice(high, [2, 2, 2, 2], 0.25);
    expect(advice.perYear?.rate).toBeCloseTo(-0.1, 3);
    expect(advice.perThousandHours?.rate).toBeCloseTo(-1, 9);
    expect(advice.inAYear?.low).toBeLessThan(-0.39);
    // A tenth of a degree a year, a quarter allowed: two and a half years, less what the line is not sure of.
    expect(advice.interval?.endedBy).toBe("drift");
    expect(advice.interval?.days).toBeGreaterThan(880);
    expect(advice.interval?.days).toBeLessThanOrEqual(914);
    const two = driftAdvice({ ...high, points: high.points.slice(0, 2) }, [2, 2], 0.25);
    expect(two).toMatchObject({
      interval: null,
      inAYear: null,
      why: expect.stringContaining("3 calibrations"),
    });
  });
});

describe("recordGaps", () => {
  it("asks each kind for what its clause needs, and a whole record for nothing", () => {
    const equipment = (kind: string, more: object) =>
      readEquipment({
        id: "x",
        tag: "T",
        kind,
        maker: "m",
        model: "",
        serial: "1",
        state: "verified",
        version: 1,
        firmware: "",
        location: "",
        receivedOn: null,
        calibrationIntervalMonths: null,
        checkIntervalDays: null,
        maintenanceIntervalDays: null,
        requirement: "{}",
        particulars: JSON.stringify({ kind: "furnace" }),
        ...more,
      });
    const furnace = equipment("furnace", {});
    const gapsOf = (kind: (typeof equipmentKinds)[number], more: object = {}) =>
      recordGaps({ ...furnace, ...more, kind } as typeof furnace);
    for (const kind of equipmentKinds)
      expect(gapsOf(kind)).toEqual(expect.arrayContaining(["receivedOn", "location"]));
    expect(gapsOf("voltmeter")).toContain("firmware");
    expect(gapsOf("reference")).toEqual(expect.arrayContaining(["calibrationIntervalMonths", "requirement"]));
    expect(gapsOf("furnace")).toContain("maintenanceIntervalDays");
    const whole = {
      firmware: "none",
      location: "here",
      receivedOn: "2026-01-01",
      calibrationIntervalMonths: 12,
      maintenanceIntervalDays: 365,
      requirement: { largestExpanded: 1, unit: "celsius" },
    };
    for (const kind of equipmentKinds) expect(gapsOf(kind, whole)).toEqual([]);
  });
});

describe("a platinum thermometer", () => {
  const printed = {
    kind: "thermometer" as const,
    curve: { form: "callendar-van-dusen" as const, zeroOhm: 100, a: 3.9083e-3, b: -5.775e-7 },
    fromCelsius: 0,
    toCelsius: 150,
    expandedCelsius: 0.03,
    coverageFactor: 2,
  };

  it("gives the temperature of a resistance, within its certificate's range only", () => {
    const findings = ThermometerFindings.parse(printed);
    // IEC 60751:2022, table of the standard: 138.5055 Ω at 100 °C (from memory, by the equation).
    const t = thermometerTemperature(findings, 100 * (1 + 3.9083e-3 * 100 - 5.775e-7 * 100 * 100));
    expect(t.ok && t.value).toBeCloseTo(100, 8);
    expect(thermometerTemperature(findings, 175)).toMatchObject({ problem: { kind: "outside-range" } });
  });

  it("of the ITS-90 needs the ratios of its subrange", () => {
    const sprt = { form: "sprt" as const, section: "3.3.2.5" as const, waterOhm: 25.5 };
    const with_ = (ratios: object) =>
      ThermometerFindings.safeParse({ ...printed, toCelsius: 29, curve: { ...sprt, ratios } });
    expect(with_({}).error?.issues[0]).toMatchObject({ path: ["curve", "ratios"] });
    const good = with_({ Ga: 1.11814 });
    expect(good.success).toBe(true);
    const t = good.data && thermometerTemperature(good.data, 25.5 * 1.11814);
    // The melting point of gallium, 29.7646 °C, lies beyond the range this certificate states.
    expect(t).toMatchObject({ problem: { kind: "outside-range" } });
    const wide = ThermometerFindings.parse({ ...printed, curve: { ...sprt, ratios: { Ga: 1.11814 } } });
    const melting = thermometerTemperature(wide, 25.5 * 1.11814);
    expect(melting.ok && melting.value).toBeCloseTo(29.7646, 4);
  });

  it("is held against the ITS-90's demand on platinum, and against its certificate before", () => {
    const sprt = (Ga: number, waterOhm = 25.5) =>
      ThermometerFindings.parse({
        ...printed,
        toCelsius: 29,
        curve: { form: "sprt", section: "3.3.2.5", waterOhm, ratios: { Ga } },
      });
    // W(Ga) of at least 1.118 07: ITS-90, Metrologia 27 (1990) 3, section 3.3.
    expect(thermometerCriterion(sprt(1.118), null, 0.01)).toMatchObject({ answer: "no" });
    expect(thermometerCriterion(sprt(1.11814), null, 0.01)).toMatchObject({ answer: "not-known" });
    const before = { certificate: "C-1", findings: sprt(1.11814) };
    // 1 mΩ in 25.5 Ω is 0.01 °C.
    expect(thermometerCriterion(sprt(1.11814, 25.501), before, 0.011)).toMatchObject({ answer: "yes" });
    expect(thermometerCriterion(sprt(1.11814, 25.501), before, 0.009)).toMatchObject({ answer: "no" });
    const industrial = ThermometerFindings.parse(printed);
    expect(thermometerCriterion(industrial, before, 1)).toMatchObject({ answer: "not-known" });
  });

  it("is refused where its range is upside down", () => {
    expect(ThermometerFindings.safeParse({ ...printed, toCelsius: -1 }).error?.issues[0]?.path).toEqual([
      "toCelsius",
    ]);
  });
});
