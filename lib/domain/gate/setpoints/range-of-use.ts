import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";
import { celsius, span } from "../words";

const source =
  "a correction is never carried beyond the lowest and highest setpoint: common practice, no source";

const assess = ({ sensors, setpointsCelsius }: GatePlan): readonly Found[] => {
  const lowest = Math.min(...setpointsCelsius);
  const highest = Math.max(...setpointsCelsius);
  return sensors.flatMap(({ tag, use }): readonly Found[] => {
    if (use === null)
      return [
        {
          code: "range-of-use-not-stated",
          outcome: "warning",
          subject: tag,
          reason: "the order does not state the range of use.",
          remedy:
            "Ask the customer, and amend the order; until then nobody can say that the setpoints cover it.",
          source,
        },
      ];
    if (lowest <= use.fromCelsius && highest >= use.toCelsius) return [];
    return [
      {
        code: "range-of-use",
        outcome: "breach",
        subject: tag,
        reason: `it is used from ${span(use)}; the setpoints reach from ${celsius(lowest)} to ${celsius(highest)}.`,
        remedy: "Order the setpoints that are missing, or say why the ends are left out.",
        source,
      },
    ];
  });
};

export const rangeOfUse = {
  code: "range-of-use",
  heading: "setpoints",
  fine: "The setpoints cover the range in which each sensor is used.",
  source,
  assess,
} as const satisfies GateCheck;
