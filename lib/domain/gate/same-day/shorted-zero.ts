import type { Found, GateCheck } from "../finding";
import { laboratoryPolicy } from "../finding";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";
import { microvolt } from "../words";

const assess = ({ bench }: Pick<GatePlan, "bench">, policy: GatePolicy): readonly Found[] => {
  const zero = bench.shortedZeroMicrovolt;
  const { value, source } = policy.shortedZeroMicrovolt;
  return zero !== null && Math.abs(zero) <= value
    ? []
    : [
        {
          code: "shorted-zero",
          outcome: "breach",
          subject: "",
          reason:
            zero === null
              ? "The voltmeter's shorted zero is not recorded today."
              : `The voltmeter reads ${microvolt(zero)} when shorted; at most ${microvolt(value)} either way.`,
          remedy: "Short its input, wait, set the zero as the maker says, and record what it reads.",
          source,
        },
      ];
};

export const shortedZero = {
  code: "shorted-zero",
  heading: "same-day",
  fine: "The voltmeter's shorted zero is in order.",
  source: laboratoryPolicy,
  assess,
} as const satisfies GateCheck;
