import { combine } from "@/lib/metrology/uncertainty/combine";
import { nistExamples } from "../vectors/nist-examples";
import { checks } from "./check";

const combined = (...effects: readonly number[]): number =>
  combine(effects.map((effect) => ({ effect, degreesOfFreedom: null }))).standardUncertainty;

// E13: α = (L1 − L0)/(L0·(T1 − T0)).
const [L0, L1, T0, T1] = [1.4999, 1.5021, 288.15, 373.1];
const expansion = (L1 - L0) / (L0 * (T1 - T0));

// Example 10: σ = 32·π⁵·h·R⁴·R∞⁴/(15·Ar(e)⁴·Mu⁴·c⁶·α⁸).
const [h, R, rydberg, electron, fine] = [
  6.62606957e-34, 8.3144621, 10973731.568539, 5.4857990946e-4, 7.2973525698e-3,
];
const stefanBoltzmann =
  (32 * Math.PI ** 5 * h * R ** 4 * rydberg ** 4) /
  (15 * electron ** 4 * 0.001 ** 4 * 299792458 ** 6 * fine ** 8);

export const nistExampleChecks = checks(nistExamples, {
  expansion: () => expansion,
  uExpansion: () =>
    combined(
      0.0002 / (L0 * (T1 - T0)),
      (0.0001 * L1) / (L0 * L0 * (T1 - T0)),
      (0.05 * expansion) / (T1 - T0),
      (0.02 * expansion) / (T1 - T0),
    ),
  stefanBoltzmann: () => stefanBoltzmann,
  uStefanBoltzmann: () =>
    stefanBoltzmann *
    combined(
      0.00000029e-34 / h,
      (4 * 0.0000075) / R,
      (4 * 0.000055) / rydberg,
      (4 * 0.0000000022e-4) / electron,
      (8 * 0.0000000024e-3) / fine,
    ),
});
