// ln 2 split so that k·LN2_HIGH is exact for |k| < 2^20, and the minimax coefficients of the remez
// polynomial for r·coth(r/2): S. Moler's and K. C. Ng's published method (fdlibm, e_exp.c, 1993).
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;
// biome-ignore lint/suspicious/noApproximativeNumericConstant: it is the very float64
const INVERSE_LN2 = 1.4426950408889634;
const COTH = [
  0.16666666666666602, -0.0027777777777015593, 0.00006613756321437934, -0.0000016533902205465252,
  4.1381367970572385e-8,
];
const OVERFLOW = 709.782712893384;
const UNDERFLOW = -745.1332191019411;

/** 2ᵏ for an integer k, by exact doubling or halving. */
function powerOfTwo(k: number): number {
  let value = 1;
  const step = k < 0 ? 0.5 : 2;
  for (let n = Math.abs(k); n > 0; n -= 1) value *= step;
  return value;
}

/**
 * eˣ, error below one unit in the last place, and the same bits in every engine: `Math.exp` is left to
 * the engine by ECMA-262 and does differ between versions.
 */
export function exponential(x: number): number {
  if (Number.isNaN(x)) return x;
  if (x > OVERFLOW) return Number.POSITIVE_INFINITY;
  if (x < UNDERFLOW) return 0;
  const k = Math.floor(INVERSE_LN2 * x + 0.5);
  const high = x - k * LN2_HIGH;
  const low = k * LN2_LOW;
  const r = high - low;
  const square = r * r;
  let series = 0;
  for (let i = COTH.length - 1; i >= 0; i -= 1) series = series * square + (COTH[i] ?? 0);
  const c = r - square * series;
  const y = 1 - (low - (r * c) / (2 - c) - high);
  // Two factors: 2^1024 alone overflows and 2^-1074 alone loses the digits of y.
  const half = Math.trunc(k / 2);
  return y * powerOfTwo(half) * powerOfTwo(k - half);
}
