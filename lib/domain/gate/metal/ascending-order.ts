import type { Found, GateCheck } from "../finding";
import { commonPractice } from "../finding";
import { isBaseMetal } from "../metal-of";
import type { GatePlan } from "../plan";
import { celsius } from "../words";

/** Base metal is measured going up and the rising value is the one certified: hysteresis follows the way down. */
const assess = ({ sensors, setpointsCelsius }: GatePlan): readonly Found[] => {
  const at = setpointsCelsius.findIndex((value, index) => {
    const before = setpointsCelsius[index - 1];
    return before !== undefined && value < before;
  });
  const [from, to] = [setpointsCelsius[at - 1], setpointsCelsius[at]];
  if (from === undefined || to === undefined) return [];
  return sensors
    .filter(({ type }) => isBaseMetal(type))
    .map(({ tag }) => ({
      code: "ascending-order",
      outcome: "breach",
      subject: tag,
      reason: `base metal is measured going up; here ${celsius(to)} follows ${celsius(from)}.`,
      remedy: "Put the setpoints in rising order.",
      source: commonPractice,
    }));
};

export const ascendingOrder = {
  code: "ascending-order",
  heading: "metal",
  fine: "The setpoints are measured in rising order.",
  source: commonPractice,
  assess,
} as const satisfies GateCheck;
