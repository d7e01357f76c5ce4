import { assessTipCheck } from "../../run/tip-check";
import type { Found, GateCheck } from "../finding";
import { laboratoryPolicy } from "../finding";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";
import { microvolt } from "../words";

/** Two channels of one type swapped are told apart only by warming each tip before the run. */
const assess = ({ tips }: Pick<GatePlan, "tips">, policy: GatePolicy): readonly Found[] => {
  const { value, source } = policy.tipRiseMicrovolt;
  return tips.flatMap(({ place, check }): readonly Found[] => {
    const state = assessTipCheck(check, value);
    if (state === "passed") return [];
    const reasons = {
      missing: "the tip in this place was not warmed.",
      "too-small": `the tip in this place rose by less than ${microvolt(value)}.`,
      "other-channels-moved":
        "other channels moved when the tip in this place was warmed: the wiring is in doubt.",
    } as const;
    return [
      {
        code: state === "other-channels-moved" ? "wiring-in-doubt" : "tips-warmed",
        outcome: "breach",
        subject: place,
        reason: reasons[state],
        remedy: "Warm the tip by hand and record what its channel, and no other, shows.",
        source,
      },
    ];
  });
};

export const tipsWarmed = {
  code: "tips-warmed",
  heading: "same-day",
  fine: "Every tip was warmed and moved its own channel alone.",
  source: laboratoryPolicy,
  assess,
} as const satisfies GateCheck;
