/** A function and its slope at one place, so that both cost one evaluation. */
export type ValueAndSlope = { readonly value: number; readonly slope: number };

const MAXIMUM_STEPS = 200;

/**
 * x in [low, high] with f(x) = target, f rising: Newton's method kept inside a shrinking bracket, halving
 * where it would leave (Press et al., Numerical Recipes, section 9.4, "rtsafe": from memory). `target` must
 * lie within f(low) … f(high); the caller checks. `start` outside the bracket or NaN: the middle. Ends when a
 * step falls below `tolerance` (unit of x), or when the bracket does (a jump at a join leaves no exact root;
 * the place of the jump comes back).
 * NaN when f gives a value that is not a number, or after 200 steps, as a slope that is none of f's can
 * cause.
 */
export function solveIncreasing(
  f: (x: number) => ValueAndSlope,
  target: number,
  range: { readonly low: number; readonly high: number },
  start: number,
  tolerance: number,
): number {
  let { low, high } = range;
  let x = start > low && start < high ? start : (low + high) / 2;
  for (let i = 0; i < MAXIMUM_STEPS; i += 1) {
    const { value, slope } = f(x);
    const difference = value - target;
    if (difference === 0) return x;
    if (Number.isNaN(difference)) return difference;
    if (difference < 0) low = x;
    else high = x;
    const newton = x - difference / slope;
    // Strictly inside: an end that was tried already would be tried for ever across a jump.
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - x) <= tolerance || high - low <= tolerance) return next;
    x = next;
  }
  return Number.NaN;
}
