import { quantile } from "../number/quantile";

/** Below this a departure cannot be told from what a furnace at rest does, °C. */
const LEAST_CELSIUS = 0.05;
/** Median absolute deviation to standard deviation of a normal distribution, and how many of them are too many. */
const SCALE = 1.4826;
const TOO_MANY = 6;

/**
 * How many of the last values of a dwell belong to the ramp that ends it. A ramp of 10 °C/min stays within 5 °C of the
 * setpoint for half a minute; its first readings hardly change the slope of a long window, but they are not rest.
 * No source: this project's own rule. Values in °C at equal steps; NaN never departs.
 * `recent`: how many values tell what rest looks like. One value more than departs is given up: the scan in which the
 * ramp began is of both. Returns 0 where nothing departs.
 *
 * Source: six robust standard deviations (common practice, no source). `values` in °C; no error cases.
 */
export function departing(values: readonly number[], recent: number): number {
  const rest = values.slice(Math.max(0, values.length - recent));
  const middle = quantile(rest, 0.5);
  const limit = Math.max(
    LEAST_CELSIUS,
    TOO_MANY *
      SCALE *
      quantile(
        rest.map((value) => Math.abs(value - middle)),
        0.5,
      ),
  );
  let count = 0;
  while (count < values.length && Math.abs((values[values.length - 1 - count] as number) - middle) > limit)
    count += 1;
  return count === 0 ? 0 : count + 1;
}
