import { conformanceProbability } from "@/lib/metrology/conformity/conformance-probability";
import { exponential } from "@/lib/metrology/number/exponential";
import { linearFit } from "@/lib/metrology/number/linear-fit";
import { normalProbability } from "@/lib/metrology/number/normal";
import { studentQuantile } from "@/lib/metrology/number/student";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { temperatureRange } from "@/lib/metrology/thermocouple/reference-function";
import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import { temperature } from "@/lib/metrology/thermocouple/temperature";

/** Everything in metrology that could come out differently in another engine, as a few thousand numbers. */
function* numbers(): Generator<number> {
  for (let x = -20; x < 20; x += 0.37) {
    yield exponential(x);
    yield normalProbability(x / 2);
    yield conformanceProbability(x / 8, 0.7, -2.5, 2.5);
  }
  for (const nu of [1, 2, 3, 9, 10, 99, 1000, 1001, 12345]) yield studentQuantile(0.9544997361036416, nu, 2);
  for (const reference of Object.values(referenceFunctions)) {
    const { fromCelsius, toCelsius } = temperatureRange(reference);
    for (let t = fromCelsius; t <= toCelsius; t += 7.3) {
      const microvolt = emf(reference, t);
      const slope = seebeck(reference, t);
      yield microvolt.ok ? microvolt.value : Number.NaN;
      yield slope.ok ? slope.value : Number.NaN;
      const back = temperature(reference, microvolt.ok ? microvolt.value : Number.NaN);
      yield back.ok ? back.value : Number.NaN;
    }
  }
  const fit = linearFit([0, 9.7, 21.3, 30.1], [600.013, 600.021, 599.987, 600.034]);
  yield fit.ok ? fit.value.slope : Number.NaN;
}

/** FNV-1a (64 bit) over the bits of all of them, as hex. Runs in Node and in a browser. */
export function goldenBits(): string {
  const view = new DataView(new ArrayBuffer(8));
  let hash = 0xcbf29ce484222325n;
  for (const x of numbers()) {
    view.setFloat64(0, x);
    for (let i = 0; i < 8; i += 1) {
      hash = ((hash ^ BigInt(view.getUint8(i))) * 0x100000001b3n) & 0xffffffffffffffffn;
    }
  }
  return hash.toString(16).padStart(16, "0");
}

/** Changes only together with the engine version. */
export const GOLDEN = { engineVersion: "2.0.0", bits: "bf730ae87bf99b8f" } as const;
