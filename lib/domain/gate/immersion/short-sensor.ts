import type { Found, GateCheck } from "../finding";
import { commonPractice } from "../finding";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";
import { millimetre } from "../words";

const assess = ({ sensors, configuration }: GatePlan, policy: GatePolicy): readonly Found[] => {
  const wanted = configuration.immersionMillimetre;
  return sensors.flatMap(({ tag, build }): readonly Found[] => {
    const { lengthMillimetre } = build;
    if (lengthMillimetre === undefined)
      return [
        {
          code: "length-not-stated",
          outcome: "warning",
          subject: tag,
          reason: "its length is not stated.",
          remedy: `Measure it: it has to reach ${millimetre(wanted)} into the furnace.`,
          source: commonPractice,
        },
      ];
    if (lengthMillimetre >= wanted - policy.immersionShortfallMillimetre.value) return [];
    return [
      {
        code: "short-sensor",
        outcome: "breach",
        subject: tag,
        reason: `it is ${millimetre(lengthMillimetre)} long and cannot reach the best uniformity at ${millimetre(wanted)}.`,
        remedy:
          "Refuse it, or use a furnace whose best uniformity it reaches. Set aside with a reason, its results are reported outside the scope, each marked so.",
        source: commonPractice,
      },
    ];
  });
};

export const shortSensor = {
  code: "short-sensor",
  heading: "immersion",
  fine: "Every sensor is long enough for the best uniformity.",
  source: commonPractice,
  assess,
} as const satisfies GateCheck;
