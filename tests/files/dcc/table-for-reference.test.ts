import { describe, expect, it } from "vitest";
import { ReferenceFindings, VoltmeterFindings } from "@/lib/domain/calibration/findings";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { tableForReference } from "@/lib/files/dcc/table-for-reference";
import { good } from "./change-passage";
import { deviation, emfColumn, only, reference } from "./proposals";
import { certificateOf, example, fixture } from "./read-fixture";

/** The deviations of the file as errors in kelvin. */
const inKelvin = deviation
  .replace("-1.1 -2.0 -3.2 -4.1 -5.6 -6.9", "-0.12 -0.19 -0.28 -0.33 -0.42 -0.50")
  .replace("\\micro\\volt", "\\kelvin")
  .replace("3.4 3.7 4.3 4.9 5.6 6.2", "0.40");

describe("the certificate of the demonstration", () => {
  const offer = reference(good, "R");

  it("proposes temperature, deviation and U as they stand, each with its place", () => {
    expect(offer.statedAs).toBe("volt");
    expect(
      offer.rows.map(({ celsius, deviationMicrovolt, uncertainty }) => [
        celsius.value,
        deviationMicrovolt.value,
        uncertainty?.expanded.value,
        uncertainty?.coverageFactor?.value,
      ]),
    ).toEqual([
      [250, -1.1, 3.4, 2],
      [400, -2, 3.7, 2],
      [600, -3.2, 4.3, 2],
      [800, -4.1, 4.9, 2],
      [1000, -5.6, 5.6, 2],
      [1150, -6.9, 6.2, 2],
    ]);
    const [row] = offer.rows;
    expect(row?.celsius).toMatchObject({ written: "250.00 \\degreecelsius", how: "" });
    expect(row?.deviationMicrovolt).toMatchObject({ written: "-1.1 \\micro\\volt", how: "" });
    const line = good.slice(0, good.indexOf("<si:valueXMLList>-1.1")).split("\n").length;
    expect(row?.deviationMicrovolt.from.path).toMatch(/\/list\/quantity\[3\]\/realListXMLList$/);
    expect(row?.deviationMicrovolt.from.line).toBe(line - 1);
    expect(row?.uncertainty?.expanded.from.path).toMatch(/\/expandedMUXMLList$/);
  });

  it("offers the largest U for the whole, and says so", () => {
    expect(offer.overall).toMatchObject({
      unit: "microvolt",
      expanded: { value: 6.2 },
      coverageFactor: { value: 2 },
    });
    expect(offer.remarks.join(" ")).toContain("the largest one");
  });

  it("fits the findings of a reference", () => {
    const findings = {
      kind: "reference",
      points: offer.rows.map(({ celsius, deviationMicrovolt }) => ({
        celsius: celsius.value,
        deviationMicrovolt: deviationMicrovolt.value,
      })),
      expanded: offer.overall?.expanded.value,
      unit: offer.overall?.unit,
      coverageFactor: offer.overall?.coverageFactor.value,
    };
    expect(ReferenceFindings.parse(findings).points).toHaveLength(6);
  });

  it("warns where the record is of another type, or where the words decided", () => {
    expect(reference(good, "S").remarks[0]).toContain("type R, our record of type S");
    expect(reference(good).remarks[0]).toBe("Type R was read from the words of the item.");
    expect(reference(good, "R").remarks.join(" ")).not.toContain("words of the item");
  });

  it("warns of a row whose emf and deviation do not belong together", () => {
    expect(reference(good.replace("3405.7", "3415.7"), "R").remarks.join(" ")).toContain(
      "At 400 °C the file says -2 µV here and 8.015 µV by its other column (Emf)",
    );
    expect(offer.remarks.join(" ")).not.toContain("by its other column");
  });
});

describe("the deviation in other words", () => {
  it("in volt is brought to µV, exactly", () => {
    const volt = good.replace(
      deviation,
      deviation
        .replace("-1.1 -2.0 -3.2 -4.1 -5.6 -6.9", "-0.0011 -0.0020 -0.0032 -0.0041 -0.0056 -0.0069")
        .replace("\\micro\\volt", "\\milli\\volt")
        .replace("3.4 3.7 4.3 4.9 5.6 6.2", "0.0062"),
    );
    const offer = reference(volt, "R");
    expect(offer.rows.map(({ deviationMicrovolt }) => deviationMicrovolt.value)).toEqual([
      -1.1, -2, -3.2, -4.1, -5.6, -6.9,
    ]);
    expect(offer.rows[0]?.deviationMicrovolt.how).toBe("× 10^3, to µV");
    expect(offer.overall?.expanded).toMatchObject({ value: 6.2, written: "0.0062 \\milli\\volt" });
    expect(offer.remarks.join(" ")).not.toContain("largest");
  });

  it("as a correction changes its sign, and says so", () => {
    const correction = good.replace("basic_measurementError ntl_deviation", "basic_correction");
    const [row] = reference(correction, "R").rows;
    expect(row?.deviationMicrovolt).toMatchObject({
      value: 1.1,
      how: "sign changed: the file gives the correction",
    });
  });

  it("as emf only is the emf minus the reference function of the type", () => {
    const offer = reference(good.replace(deviation, ""), "R");
    expect(offer.statedAs).toBe("emf");
    for (const [index, wanted] of [-1.1, -2, -3.2, -4.1, -5.6, -6.9].entries())
      expect(Math.abs((offer.rows[index]?.deviationMicrovolt.value ?? 99) - wanted)).toBeLessThan(0.051);
    expect(offer.rows[0]?.deviationMicrovolt.how).toMatch(/^minus 1923\.\d\d µV of type R at 250 °C$/);
  });

  it("in kelvin says that it is, and multiplies by the slope", () => {
    const offer = reference(good.replace(emfColumn, "").replace(deviation, inKelvin), "R");
    expect(offer.statedAs).toBe("kelvin");
    expect(offer.remarks.join(" ")).toContain("the error in kelvin, not in µV");
    // 8.86 µV/°C at 250 °C to 13.6 µV/°C at 1150 °C: NIST Monograph 175, type R.
    expect(offer.rows[0]?.deviationMicrovolt.value).toBeCloseTo(-0.12 * 9.235, 1);
    expect(offer.rows[5]?.deviationMicrovolt.how).toMatch(/^× 13\.\d{3} µV\/°C of type R at 1150 °C$/);
    expect(offer.overall).toMatchObject({
      unit: "celsius",
      expanded: { value: 0.4, written: "0.40 \\kelvin" },
    });
  });

  it("in kelvin without a type is offered as a thermometer's error, not as a deviation", () => {
    const nameless = good.replace("Reference thermocouple, type R,", "Reference thermocouple,");
    const offer = only(nameless.replace(emfColumn, "").replace(deviation, inKelvin));
    expect(offer.kind).toBe("thermometer");
  });

  it("with temperatures in kelvin alone takes 273.15 off", () => {
    const hybrid = good.slice(
      good.indexOf("<si:hybrid>"),
      good.indexOf("</si:hybrid>") + "</si:hybrid>".length,
    );
    const kelvin = hybrid.slice(
      hybrid.indexOf("<si:realListXMLList>"),
      hybrid.indexOf("</si:realListXMLList>") + "</si:realListXMLList>".length,
    );
    const offer = reference(good.replace(hybrid, kelvin), "R");
    expect(offer.rows.map(({ celsius }) => celsius.value)).toEqual([250, 400, 600, 800, 1000, 1150]);
    expect(offer.rows[0]?.celsius.how).toBe("− 273.15, kelvin to °C");
  });
});

describe("other certificates", () => {
  it("names without refTypes are understood and told (3.0.0)", () => {
    const offer = reference(new TextDecoder().decode(fixture("dcc-3.0.0.xml")));
    expect(offer.statedAs).toBe("emf");
    // Type S of NIST Monograph 175: 3446.89 µV at 419.527 °C, 5860.13 µV at 660.323 °C.
    expect(offer.rows.map(({ deviationMicrovolt }) => deviationMicrovolt.value)).toEqual([0.912, 1.072]);
    expect(offer.remarks.join(" ")).toContain('What "Emf" is was told by its name alone');
    expect(offer.overall).toMatchObject({ unit: "microvolt", expanded: { value: 2.6 } });
  });

  it("a voltmeter: corrections at its indication (3.1.2)", () => {
    const offer = only(new TextDecoder().decode(fixture("dcc-3.1.2.xml")));
    if (offer.kind !== "voltmeter") expect.fail(`offered as ${offer.kind}`);
    const corrections = offer.rows.map(({ microvolt, correctionMicrovolt }) => ({
      microvolt: microvolt.value,
      correctionMicrovolt: correctionMicrovolt.value,
    }));
    expect(corrections).toEqual([
      { microvolt: 0.1, correctionMicrovolt: -0.1 },
      { microvolt: 10000.3, correctionMicrovolt: -0.3 },
      { microvolt: 49999.2, correctionMicrovolt: 0.8 },
    ]);
    expect(
      VoltmeterFindings.parse({
        kind: "voltmeter",
        corrections,
        expandedMicrovolt: offer.overall?.expanded.value,
        coverageFactor: 2,
      }).expandedMicrovolt,
    ).toBe(0.6);
  });

  it("a thermometer with intervals: half of them, and no k (3.2.1)", () => {
    const offer = only(new TextDecoder().decode(fixture("dcc-3.2.1.xml")));
    if (offer.kind !== "thermometer") expect.fail(`offered as ${offer.kind}`);
    expect(
      offer.rows.map(({ celsius, errorCelsius, uncertainty }) => [
        celsius.value,
        errorCelsius.value,
        uncertainty?.expanded.value,
      ]),
    ).toEqual([
      [0.01, 0.012, 0.02],
      [50, -0.02, 0.02],
    ]);
    expect(offer.rows[0]?.uncertainty?.expanded.how).toContain("half of the coverage interval");
    expect(offer.overall).toBeNull();
  });

  it("the published Pt100 example", () => {
    const bytes = example("dcclib_valid.xml");
    if (bytes === null) return expect(bytes).toBeNull();
    const [offer] = tableForReference(certificateOf(readDcc(bytes))).offers;
    if (offer?.kind !== "thermometer") expect.fail(`offered as ${offer?.kind}`);
    expect(offer.rows.map(({ celsius, errorCelsius }) => [celsius.value, errorCelsius.value])).toEqual([
      [33.098, 0.072],
      [99.971, 0.089],
      [175.103, 0.107],
      [250.169, -0.009],
      [320.004, -0.084],
    ]);
    expect(offer.overall).toMatchObject({
      unit: "celsius",
      expanded: { value: 0.061 },
      coverageFactor: { value: 2 },
    });
  });

  it("the type N example: the emf, with the error in kelvin beside it", () => {
    const bytes = example("dcc-thermocouple-typeN-3.3.0.xml");
    if (bytes === null) return expect(bytes).toBeNull();
    const [offer] = tableForReference(certificateOf(readDcc(bytes)), "N").offers;
    if (offer?.kind !== "reference") expect.fail(`offered as ${offer?.kind}`);
    expect(offer.statedAs).toBe("emf");
    // 20 613.11, 28 454.52 and 36 255.54 µV of type N, printed to 1 µV in the file.
    expect(offer.rows.map(({ deviationMicrovolt }) => Math.abs(deviationMicrovolt.value) < 0.5)).toEqual([
      true,
      true,
      true,
    ]);
    expect(offer.remarks.join(" ")).toContain("also states the error in kelvin");
    expect(offer.remarks.join(" ")).not.toContain("by its other column");
  });
});
