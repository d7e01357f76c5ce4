import { found, type Outcome, refused } from "../outcome";
import { type CallendarVanDusen, PLATINUM_FROM_CELSIUS, PLATINUM_TO_CELSIUS } from "./callendar-van-dusen";

/**
 * R(t) in Ω and dR/dt in Ω/°C, t in °C: IEC 60751, R = R₀·[1 + At + Bt² + C(t − 100)t³], the last term below
 * 0 °C only. No range is checked; NaN stays NaN.
 */
export function resistanceAndSlope(
  sensor: CallendarVanDusen,
  celsius: number,
): { readonly value: number; readonly slope: number } {
  const { zeroOhm, a, b } = sensor;
  const t = celsius;
  const c = t < 0 ? sensor.c : 0;
  return {
    value: zeroOhm * (1 + t * (a + t * (b + t * c * (t - 100)))),
    slope: zeroOhm * (a + t * (2 * b + t * c * (4 * t - 300))),
  };
}

/**
 * R(t) in Ω of an industrial platinum thermometer, t in °C (ITS-90) from −200 °C to 850 °C: IEC 60751:2008
 * and 2022. The standard warns that for an uncertainty below 0.1 °C this function may not be good enough.
 * Problems: `not-finite`; `outside-range`.
 */
export function platinumResistance(sensor: CallendarVanDusen, celsius: number): Outcome<number> {
  if (!Number.isFinite(celsius)) return refused("not-finite", `temperature ${celsius} is not a number`);
  if (celsius < PLATINUM_FROM_CELSIUS || celsius > PLATINUM_TO_CELSIUS) {
    return refused("outside-range", `${celsius} °C: IEC 60751 goes from -200 °C to 850 °C`);
  }
  return found(resistanceAndSlope(sensor, celsius).value);
}
