// ln 2 split so that k·LN2_HIGH is exact for |k| < 2^20, and the minimax coefficients of the remez
// polynomial for r·coth(r/2): S. Moler's and K. C. Ng's published method (fdlibm, e_exp.c, 1993).
const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;
// biome-ignore lint/suspicious/noApproximativeNumericConstant: it is the very float64
const INVERSE_LN2 = 1.4426950408889634;
const C1 = 0.16666666666666602;
const C2 = -0.0027777777777015593;
const C3 = 0.00006613756321437934;
const C4 = -0.0000016533902205465252;
const C5 = 4.1381367970572385e-8;
const OVERFLOW = 709.782712893384;
const UNDERFLOW = -745.1332191019411;

/**
 * 2^-1021 … 2^1023 by exact doubling: a table, since raising to a power at each call would cost more than all
 * the rest.
 */
const LOWEST_POWER = -1021;
const HIGHEST_POWER = 1023;
const powersOfTwo = new Float64Array(HIGHEST_POWER - LOWEST_POWER + 1);
powersOfTwo[-LOWEST_POWER] = 1;
for (let n = 1; n <= HIGHEST_POWER; n += 1) {
  powersOfTwo[n - LOWEST_POWER] = 2 * (powersOfTwo[n - 1 - LOWEST_POWER] as number);
}
for (let n = -1; n >= LOWEST_POWER; n -= 1) {
  powersOfTwo[n - LOWEST_POWER] = 0.5 * (powersOfTwo[n + 1 - LOWEST_POWER] as number);
}

/**
 * eˣ by fdlibm's method (e_exp.c): x = k·ln 2 + r, a rational form of e^r, times 2ᵏ. x and eˣ are pure
 * numbers. Error below one unit in the last place, and the same bits in every engine: `Math.exp` is left to
 * the engine by ECMA-262 and does differ between versions. Above 709.78 infinity, below -745.13 zero; NaN
 * gives NaN.
 */
export function exponential(x: number): number {
  if (x > OVERFLOW) return Number.POSITIVE_INFINITY;
  if (x < UNDERFLOW) return 0;
  if (Number.isNaN(x)) return x;
  const k = Math.floor(INVERSE_LN2 * x + 0.5);
  const high = x - k * LN2_HIGH;
  const low = k * LN2_LOW;
  const r = high - low;
  const square = r * r;
  const c = r - square * ((((C5 * square + C4) * square + C3) * square + C2) * square + C1);
  const y = 1 - (low - (r * c) / (2 - c) - high);
  if (k >= LOWEST_POWER && k <= HIGHEST_POWER) return y * (powersOfTwo[k - LOWEST_POWER] as number);
  // Two factors: 2^1024 alone overflows and 2^-1074 alone loses the digits of y.
  const half = Math.trunc(k / 2);
  return y * (powersOfTwo[half - LOWEST_POWER] as number) * (powersOfTwo[k - half - LOWEST_POWER] as number);
}
