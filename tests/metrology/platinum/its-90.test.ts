import { describe, expect, it } from "vitest";
import { logarithm } from "@/lib/metrology/number/logarithm";
import { power } from "@/lib/metrology/number/power";
import type { Outcome } from "@/lib/metrology/outcome";
import {
  type FixedPoint,
  type FixedPointRatios,
  fixedPointKelvin,
} from "@/lib/metrology/platinum/fixed-point";
import { its90Kelvin } from "@/lib/metrology/platinum/its-90-kelvin";
import { its90Ratio, ratioAndSlope } from "@/lib/metrology/platinum/its-90-ratio";
import { sprtAcceptance } from "@/lib/metrology/platinum/sprt-acceptance";
import { type SprtCalibration, sprtCalibration } from "@/lib/metrology/platinum/sprt-calibration";
import { sprtDeviation } from "@/lib/metrology/platinum/sprt-deviation";
import { sprtRatio } from "@/lib/metrology/platinum/sprt-ratio";
import { type SprtSection, sprtSubranges } from "@/lib/metrology/platinum/sprt-subrange";
import { sprtTemperature } from "@/lib/metrology/platinum/sprt-temperature";
import { its90Ratios } from "../vectors/its-90";
import { inventedThermometer } from "../vectors/platinum-recomputed";

const sections = Object.keys(sprtSubranges) as SprtSection[];

function known<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
}

/** W at all fixed points of an invented thermometer: W_r less 3e-4 of it, bent a little, so that every term is needed. */
const ratios = Object.fromEntries(
  Object.entries(fixedPointKelvin).map(([point, kelvin]) => {
    const ratio = known(its90Ratio(kelvin));
    const x = ratio - 1;
    return [point, ratio - 3e-4 * x - 2e-5 * x * x + (ratio > 3.4 ? 3e-6 : 0)];
  }),
) as Record<FixedPoint, number>;

describe("the reference function of the ITS-90", () => {
  it.each(its90Ratios)(
    "W_r at the $place, $input K, is $printed, and back",
    ({ input: kelvin, printed: ratio }) => {
      expect(Math.abs(known(its90Ratio(kelvin)) - Number(ratio))).toBeLessThan(1e-8);
      // 1e-8 in W_r is 41 µK at 13.8 K, where the slope is 2.4e-4 per kelvin, and 3 µK from 100 K up.
      expect(Math.abs(known(its90Kelvin(Number(ratio))) - kelvin)).toBeLessThan(kelvin < 100 ? 5e-5 : 3e-6);
    },
  );

  it("comes back within 1e-9 K over the whole range", () => {
    const places = [13.8033, 273.15, 273.15 - 1e-7, 273.16, 1234.93];
    for (let kelvin = 13.81; kelvin < 1234.9; kelvin += 0.73) places.push(kelvin);
    for (const kelvin of places) {
      expect(Math.abs(known(its90Kelvin(known(its90Ratio(kelvin)))) - kelvin)).toBeLessThan(1e-9);
    }
  });

  it("has the slope of its value, and no step worth naming at 0 °C", () => {
    for (const kelvin of [20, 100, 270, 280, 700, 1200]) {
      const rise = ratioAndSlope(kelvin + 0.001).value - ratioAndSlope(kelvin - 0.001).value;
      expect(ratioAndSlope(kelvin).slope).toBeCloseTo(rise / 0.002, 8);
    }
    const step = ratioAndSlope(273.15).value - ratioAndSlope(273.15 - 1e-12).value;
    expect(Math.abs(step)).toBeLessThan(1e-8);
    expect(known(its90Kelvin(ratioAndSlope(273.15).value - step / 2))).toBeCloseTo(273.15, 9);
  });

  it("refuses what lies outside, by name", () => {
    const cases = [
      [its90Ratio(Number.NaN), "not-finite"],
      [its90Ratio(13.8), "outside-range"],
      [its90Ratio(1235), "outside-range"],
      [its90Kelvin(Number.NaN), "not-finite"],
      [its90Kelvin(0.001), "outside-range"],
      [its90Kelvin(4.2865), "outside-range"],
    ] as const;
    for (const [result, kind] of cases) expect(!result.ok && result.problem.kind).toBe(kind);
  });
});

describe("deviation functions", () => {
  it("returns the coefficients of an invented thermometer, and its temperatures from its resistances", () => {
    const { tripleOhm, ohm, a, b, c } = inventedThermometer;
    const at = (celsius: number) => (ohm.find(([t]) => t === celsius)?.[1] ?? Number.NaN) / tripleOhm;
    const own = known(sprtCalibration("3.3.2.1", { Sn: at(231.928), Zn: at(419.527), Al: at(660.323) }));
    expect(own.a).toBeCloseTo(a, 11);
    expect(own.b).toBeCloseTo(b, 11);
    expect(own.c).toBeCloseTo(c, 11);
    expect(own.d).toBe(0);
    for (const [celsius, value] of ohm) {
      // At 0.01 °C that program takes equation (9a), this one (10a): 5e-9 apart in W_r, which is 1.4 µK.
      const apart = celsius === 0.01 ? 1.4e-6 : 0;
      const back = known(sprtTemperature(own, value / tripleOhm));
      expect(Math.abs(back - celsius)).toBeLessThan(apart + 1e-9);
      expect(Math.abs(known(sprtRatio(own, celsius)) * tripleOhm - value)).toBeLessThan(apart / 10 + 1e-10);
    }
  });

  it.each(sections)(
    "subrange %s goes through its fixed points and back and forth over all of it",
    (section) => {
      const own = known(sprtCalibration(section, ratios));
      const { points, hasSilver, fromKelvin, toKelvin } = own.subrange;
      for (const point of hasSilver ? [...points, "Ag" as const] : points) {
        const celsius = known(sprtTemperature(own, ratios[point]));
        expect(Math.abs(celsius + 273.15 - fixedPointKelvin[point]), point).toBeLessThan(1e-8);
      }
      for (let i = 0; i <= 50; i += 1) {
        const celsius = fromKelvin - 273.15 + ((toKelvin - fromKelvin) * i) / 50;
        expect(Math.abs(known(sprtTemperature(own, known(sprtRatio(own, celsius)))) - celsius)).toBeLessThan(
          1e-9,
        );
      }
      for (const kelvin of [fromKelvin - 0.01, toKelvin + 0.01]) {
        const beyond = sprtRatio(own, kelvin - 273.15);
        expect(!beyond.ok && beyond.problem.kind).toBe("outside-range");
        const ratio = ratioAndSlope(kelvin).value;
        const back = sprtTemperature(own, ratio + sprtDeviation(own, ratio).value);
        expect(!back.ok && back.problem.kind).toBe("outside-range");
      }
    },
  );

  it.each(sections)("subrange %s: the deviation has its own slope", (section) => {
    const own = known(sprtCalibration(section, ratios));
    for (const ratio of [0.5, 1.05, 2, 3.3, 4]) {
      const rise = sprtDeviation(own, ratio + 1e-4).value - sprtDeviation(own, ratio - 1e-4).value;
      expect(sprtDeviation(own, ratio).slope).toBeCloseTo(rise / 2e-4, 8);
    }
  });

  it("uses d above the aluminium point only", () => {
    const own = known(sprtCalibration("3.3.2", ratios));
    const without = known(sprtCalibration("3.3.2.1", ratios));
    expect(own.d).not.toBe(0);
    expect(sprtDeviation(own, 3.3)).toEqual(sprtDeviation(without, 3.3));
    expect(sprtDeviation(own, 4.2).value).not.toBe(sprtDeviation(without, 4.2).value);
  });

  it("names what it lacks and what makes no sense", () => {
    const missing = sprtCalibration("3.3.2", { Sn: ratios.Sn, Zn: ratios.Zn });
    expect(!missing.ok && missing.problem).toEqual({
      kind: "too-few",
      message: "subrange 3.3.2 of the ITS-90 also needs W at Al, Ag",
    });
    const kinds = (section: SprtSection, changed: FixedPointRatios) => {
      const result = sprtCalibration(section, { ...ratios, ...changed });
      return !result.ok && result.problem.kind;
    };
    expect(kinds("3.3.2.2", { Zn: Number.NaN })).toBe("not-finite");
    expect(kinds("3.3.2.2", { Zn: -1 })).toBe("not-finite");
    expect(kinds("3.3.2.2", { Zn: ratios.Sn })).toBe("no-solution");
    expect(kinds("3.3.2.5", { Ga: 1 })).toBe("no-solution");
    const own = known(sprtCalibration("3.3.2", ratios));
    const notFinite = [sprtRatio(own, Number.NaN), sprtTemperature(own, Number.NaN)];
    for (const result of notFinite) expect(!result.ok && result.problem.kind).toBe("not-finite");
    const wild: SprtCalibration = { ...own, a: 0.2 };
    const lost = sprtRatio(wild, 900);
    expect(!lost.ok && lost.problem.kind).toBe("no-solution");
  });
});

describe("acceptance of a standard thermometer", () => {
  it.each([
    [{ Ga: 1.11807 }, false, "accepted"],
    [{ Ga: 1.118069 }, false, "refused"],
    [{ Hg: 0.844235 }, false, "accepted"],
    [{ Hg: 0.844236 }, false, "refused"],
    [{ Ga: 1.1, Hg: 0.8442 }, false, "accepted"],
    [{}, false, "not-shown"],
    [{ Ga: Number.NaN }, false, "not-shown"],
    [{ Ag: 4.2865 }, true, "not-shown"],
    [{ Ga: 1.1181 }, true, "not-shown"],
    [{ Ga: 1.1181, Ag: 4.2843 }, true, "refused"],
    [{ Ga: 1.1181, Ag: 4.2844 }, true, "accepted"],
  ] as const)("%o, to the silver point %s: %s", (measured, isForSilver, kind) => {
    expect(sprtAcceptance(measured, isForSilver).kind).toBe(kind);
  });
});

describe("logarithm and power", () => {
  it("is within a unit in the last place, from the smallest number to the largest", () => {
    for (let x = 5e-324; x < 1e308; x *= 1.7 + (x < 1e-300 ? 1 : 0)) {
      expect(Math.abs(logarithm(x) - Math.log(x))).toBeLessThanOrEqual(Math.abs(Math.log(x)) * 2.3e-16);
    }
    for (let x = 0.5; x < 2; x += 0.00137) {
      expect(Math.abs(logarithm(x) - Math.log(x))).toBeLessThanOrEqual(Math.abs(Math.log(x)) * 2.3e-16);
    }
    expect(logarithm(1)).toBe(0);
    expect(logarithm(2)).toBe(Math.LN2);
  });

  it("has its limits", () => {
    expect([0, -0, -1, Number.NaN, Number.POSITIVE_INFINITY].map(logarithm)).toEqual([
      Number.NEGATIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
      Number.NaN,
      Number.NaN,
      Number.POSITIVE_INFINITY,
    ]);
  });

  it("raises to a power", () => {
    expect(power(64, 1 / 6)).toBeCloseTo(2, 14);
    expect(power(10, -3)).toBeCloseTo(1e-3, 17);
    expect(power(5, 0)).toBe(1);
    expect(power(0, 2)).toBe(0);
    expect(power(0, -2)).toBe(Number.POSITIVE_INFINITY);
    expect(power(-8, 1 / 3)).toBeNaN();
  });
});
