/** A function and its slope at one place, so that both cost one evaluation. */
export type ValueAndSlope = { readonly value: number; readonly slope: number };

const MAXIMUM_STEPS = 100;

/**
 * x in [low, high] with f(x) = target, f rising: Newton steps inside a shrinking bracket, halving where
 * Newton would leave it. `target` must lie within f(low) … f(high); the caller checks. Ends when a step
 * falls below `tolerance`, or when the bracket does (a jump at a join leaves no exact root).
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
    if (difference < 0) low = x;
    else high = x;
    const newton = x - difference / slope;
    // Strictly inside: an end that was tried already would be tried for ever across a jump.
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - x) <= tolerance || high - low <= tolerance) return next;
    x = next;
  }
  return x;
}
