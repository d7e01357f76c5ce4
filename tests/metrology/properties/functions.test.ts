import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { errorFunction } from "@/lib/metrology/number/error-function";
import { exponential } from "@/lib/metrology/number/exponential";
import { logarithm } from "@/lib/metrology/number/logarithm";
import { mean } from "@/lib/metrology/number/mean";
import { studentProbability, studentQuantile } from "@/lib/metrology/number/student";
import { sum } from "@/lib/metrology/number/sum";
import { its90Kelvin } from "@/lib/metrology/platinum/its-90-kelvin";
import { its90Ratio } from "@/lib/metrology/platinum/its-90-ratio";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { temperatureRange } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { temperature } from "@/lib/metrology/thermocouple/temperature";
import { resultOf } from "../result-of";
import { number, seeded } from "./arbitraries";

/** What may still be lost through E and back: 1e-9 °C from −200 °C up, 1e-7 °C below, where the polynomials cancel. */
const lost = (celsius: number): number => (celsius < -200 ? 1e-7 : 1e-9);

describe.each(Object.values(referenceFunctions))("type $letter", (reference) => {
  const { fromCelsius, toCelsius } = temperatureRange(reference);
  // Type B falls before it rises: it has its inverse from 250 °C.
  const rising = { from: reference.inverseFromCelsius ?? fromCelsius, to: toCelsius };
  const rises = number(rising.from, rising.to);

  it("rises with temperature", () => {
    fc.assert(
      fc.property(rises, rises, (one, other) => {
        fc.pre(Math.abs(one - other) > 1e-6);
        const [low, high] = one < other ? [one, other] : [other, one];
        return resultOf(emf(reference, low)) < resultOf(emf(reference, high));
      }),
      seeded,
    );
  });

  it("comes back through its emf", () => {
    fc.assert(
      fc.property(rises, (celsius) => {
        const back = resultOf(temperature(reference, resultOf(emf(reference, celsius))));
        expect(Math.abs(back - celsius)).toBeLessThanOrEqual(
          lost(celsius) + 1e-7 * Number(isAtJoin(celsius)),
        );
      }),
      seeded,
    );
  });

  const isAtJoin = (celsius: number): boolean =>
    reference.pieces.some((piece) => Math.abs(celsius - piece.toCelsius) < 1e-6);

  it("has the slope of its own curve", () => {
    fc.assert(
      fc.property(number(fromCelsius + 1, toCelsius - 1), (celsius) => {
        fc.pre(reference.pieces.every((piece) => Math.abs(celsius - piece.toCelsius) > 0.02));
        const step = 0.01;
        const rise = resultOf(emf(reference, celsius + step)) - resultOf(emf(reference, celsius - step));
        expect(Math.abs(rise / (2 * step) - resultOf(seebeck(reference, celsius)))).toBeLessThan(2e-4);
      }),
      seeded,
    );
  });
});

describe("elementary functions", () => {
  it("turn sums into products, and back", () => {
    fc.assert(
      fc.property(number(-300, 300), number(-300, 300), (x, y) => {
        const product = exponential(x) * exponential(y);
        expect(Math.abs(exponential(x + y) / product - 1)).toBeLessThan(1e-12);
        expect(Math.abs(logarithm(exponential(x)) - x)).toBeLessThan(1e-13 * Math.max(1, Math.abs(x)));
      }),
      seeded,
    );
  });

  it("are odd and rising where they must be", () => {
    fc.assert(
      fc.property(number(-6, 6), number(1e-6, 1), (x, step) => {
        expect(errorFunction(-x)).toBe(-errorFunction(x));
        expect(errorFunction(x + step)).toBeGreaterThanOrEqual(errorFunction(x));
      }),
      seeded,
    );
  });

  it("give back the probability that a quantile was asked for", () => {
    fc.assert(
      fc.property(number(0.5, 0.999), fc.integer({ min: 1, max: 300 }), (p, nu) => {
        expect(Math.abs(studentProbability(studentQuantile(p, nu), nu) - p)).toBeLessThan(1e-10);
      }),
      seeded,
    );
  });

  it("find the temperature of a resistance ratio of the scale", () => {
    fc.assert(
      fc.property(number(13.81, 1234.9), (kelvin) => {
        fc.pre(Math.abs(kelvin - 273.15) > 1e-3);
        expect(Math.abs(resultOf(its90Kelvin(resultOf(its90Ratio(kelvin)))) - kelvin)).toBeLessThan(1e-9);
      }),
      seeded,
    );
  });
});

describe("exact sums", () => {
  const terms = fc.array(number(-1e12, 1e12), { minLength: 1, maxLength: 40 });

  it("do not depend on the order, to the bit", () => {
    fc.assert(
      fc.property(terms, fc.infiniteStream(fc.nat()), (values, keys) => {
        const shuffled = values
          .map((value) => ({ value, key: keys.next().value as number }))
          .sort((a, b) => a.key - b.key)
          .map(({ value }) => value);
        expect(sum(shuffled)).toBe(sum(values));
        expect(mean(shuffled)).toBe(mean(values));
      }),
      seeded,
    );
  });

  it("scale by powers of two to the bit, and shift with every term", () => {
    fc.assert(
      fc.property(terms, number(-1e3, 1e3), (values, shift) => {
        expect(mean(values.map((value) => value * 8))).toBe(mean(values) * 8);
        const moved = mean(values.map((value) => value + shift));
        expect(Math.abs(moved - mean(values) - shift)).toBeLessThan(1e-3);
      }),
      seeded,
    );
  });
});
