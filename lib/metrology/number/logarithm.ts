// The method and constants of fdlibm (e_log.c, 1993): x = 2ᵏ·(1 + f) with √½ < 1 + f < √2, s = f/(2 + f), and
// a
// minimax polynomial in s² for what ln(1 + f) is beyond 2s.
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;
const SERIES = [
  0.6666666666666735, 0.3999999999940942, 0.2857142874366239, 0.22222198432149784, 0.1818357216161805,
  0.15313837699209373, 0.14798198605116586,
] as const;
// biome-ignore lint/suspicious/noApproximativeNumericConstant: it is the very float64
const SQRT_2 = 1.4142135623730951;
const TWO_TO_54 = 18014398509481984;
const SMALLEST_NORMAL = 2.2250738585072014e-308;

const view = new DataView(new ArrayBuffer(8));

/**
 * ln x by fdlibm's method (e_log.c): x and ln x are pure numbers. Error below one unit in the last place, and
 * the same bits in every engine: `Math.log` is left to the engine by ECMA-262. 0 gives −∞, +∞ gives +∞; below
 * 0 and NaN give NaN.
 */
export function logarithm(x: number): number {
  if (!(x > 0)) return x === 0 ? Number.NEGATIVE_INFINITY : Number.NaN;
  if (x === Number.POSITIVE_INFINITY) return x;
  if (x < SMALLEST_NORMAL) return split(x * TWO_TO_54, -54);
  return split(x, 0);
}

/** ln(x·2^shift) for a normal x > 0: exponent and fraction are read from the bits, so both are exact. */
function split(x: number, shift: number): number {
  view.setFloat64(0, x);
  const high = view.getUint32(0);
  view.setUint32(0, (high & 0xfffff) | 0x3ff00000);
  const fraction = view.getFloat64(0);
  const isUpper = fraction > SQRT_2;
  const k = (high >>> 20) - 1023 + shift + (isUpper ? 1 : 0);
  const f = (isUpper ? fraction / 2 : fraction) - 1;
  const s = f / (2 + f);
  const z = s * s;
  const [l1, l2, l3, l4, l5, l6, l7] = SERIES;
  const rest = z * ((((((l7 * z + l6) * z + l5) * z + l4) * z + l3) * z + l2) * z + l1);
  const half = 0.5 * f * f;
  return k * LN2_HIGH - (half - (s * (half + rest) + k * LN2_LOW) - f);
}
