import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";
import { celsius, list } from "../words";

/** The hottest a sensor has been by the time each setpoint is measured, in this run and before it. */
const hottestBefore = (setpoints: readonly number[], index: number, before: number | null): number =>
  Math.max(before ?? Number.NEGATIVE_INFINITY, ...setpoints.slice(0, index));

/**
 * Nickel-chromium orders itself between about 250 and 550 °C and shows it there after it has been hotter: such a point
 * is reported as "after exposure to X °C", never as the result.
 */
const assess = ({ sensors, setpointsCelsius }: GatePlan, policy: GatePolicy): readonly Found[] => {
  const { types, fromCelsius, toCelsius, source } = policy.afterExposure;
  return sensors.flatMap(({ tag, type, history }) => {
    if (!types.includes(type)) return [];
    const after = setpointsCelsius.filter(
      (at, index) =>
        at >= fromCelsius &&
        at <= toCelsius &&
        hottestBefore(setpointsCelsius, index, history.highestCelsius) > at,
    );
    const last = after.at(-1);
    if (last === undefined) return [];
    const hottest = hottestBefore(
      setpointsCelsius,
      setpointsCelsius.lastIndexOf(last),
      history.highestCelsius,
    );
    return [
      {
        code: "after-exposure",
        outcome: "breach",
        subject: tag,
        reason: `type ${type} at ${list(after)} after exposure to ${celsius(hottest)}.`,
        remedy: "Report these points as measured after that exposure, by agreement, or leave them out.",
        source,
      } as const,
    ];
  });
};

export const afterExposure = {
  code: "after-exposure",
  heading: "setpoints",
  fine: "No type K or E point between 250 and 550 °C follows a higher exposure that is known.",
  source: "short-range ordering in nickel-chromium: ORNL/TM-4862",
  assess,
} as const satisfies GateCheck;
