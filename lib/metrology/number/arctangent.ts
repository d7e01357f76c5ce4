/**
 * arctan x in radian, x a pure number, odd in x (Abramowitz & Stegun 4.4.42, the series, and 4.4.34 with both arguments
 * equal; numbers from memory). The angle is halved four times by
 * arctan x = 2·arctan(x / (1 + √(1 + x²))), then the Taylor series is summed (x ≤ tan(π/32) ≈ 0.0985,
 * 12 terms reach 1e-25): only + − × ÷ and √, so the same bits in every engine.
 * Every x: infinities give ±π/2, NaN stays NaN. No error cases. Relative error some units in the last place.
 */
export function arctangent(x: number): number {
  if (x < 0) return -arctangent(-x);
  if (x === Number.POSITIVE_INFINITY) return 1.5707963267948966;
  let small = x;
  for (let i = 0; i < 4; i += 1) small = small / (1 + Math.sqrt(1 + small * small));
  const square = small * small;
  let series = 0;
  for (let n = 12; n >= 0; n -= 1) series = (n % 2 === 0 ? 1 : -1) / (2 * n + 1) + series * square;
  return 16 * small * series;
}
