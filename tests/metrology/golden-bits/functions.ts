import { arctangent } from "@/lib/metrology/number/arctangent";
import { errorFunction } from "@/lib/metrology/number/error-function";
import { exponential } from "@/lib/metrology/number/exponential";
import { logarithm } from "@/lib/metrology/number/logarithm";
import { monotoneCubic } from "@/lib/metrology/number/monotone-cubic";
import { normalProbability, normalQuantile } from "@/lib/metrology/number/normal";
import { power } from "@/lib/metrology/number/power";
import { studentProbability, studentQuantile } from "@/lib/metrology/number/student";
import { sum } from "@/lib/metrology/number/sum";
import { its90Kelvin } from "@/lib/metrology/platinum/its-90-kelvin";
import { its90Ratio } from "@/lib/metrology/platinum/its-90-ratio";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { emfSeries } from "@/lib/metrology/thermocouple/emf-series";
import { temperatureRange } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { temperature } from "@/lib/metrology/thermocouple/temperature";
import { temperatureSeries } from "@/lib/metrology/thermocouple/temperature-series";

/** The functions that the language leaves to the engine, and what stands on them. */
export function* elementaryFunctions(): Generator<unknown> {
  for (let x = -20; x < 20; x += 0.37) {
    yield [exponential(x), normalProbability(x / 2), errorFunction(x / 4), arctangent(x)];
    yield [logarithm(x + 20.01), power(x + 20.01, 1 / 6), normalQuantile((x + 20.5) / 41)];
    const nodes = [0, 1, 3, 4].map((at, n) => ({ x: at, y: exponential(-at) * (n % 2 === 0 ? 1 : 2) }));
    yield monotoneCubic(nodes, (x + 20) / 10);
  }
  for (const nu of [1, 2, 3, 9, 10, 99, 1000, 1001, 12345]) {
    yield [studentQuantile(0.9544997361036416, nu, 2), studentProbability(1.3, Math.min(nu, 1000))];
  }
  yield sum([1e16, 3.14, -1e16, 1e-9, 2.71, -3.14]);
}

/** Every type over its whole range: emf, slope and exact inverse, alone and as series. */
export function* thermocouples(): Generator<unknown> {
  for (const reference of Object.values(referenceFunctions)) {
    const { fromCelsius, toCelsius } = temperatureRange(reference);
    const celsius: number[] = [];
    const microvolt: number[] = [];
    for (let t = fromCelsius; t <= toCelsius; t += 7.3) {
      const one = emf(reference, t);
      yield [one, seebeck(reference, t)];
      if (!one.ok) continue;
      const back = temperature(reference, one.value);
      yield back;
      celsius.push(t);
      if (back.ok) microvolt.push(one.value);
    }
    yield emfSeries(reference, Float64Array.from(celsius));
    yield temperatureSeries(reference, Float64Array.from(microvolt));
  }
}

/** The scale's own thermometer, both ways. */
export function* platinum(): Generator<unknown> {
  for (let kelvin = 13.9; kelvin < 1234; kelvin += 11.7) {
    const ratio = its90Ratio(kelvin);
    yield ratio;
    if (ratio.ok) yield its90Kelvin(ratio.value);
  }
}
