import type { Found, GateCheck } from "../finding";
import { laboratoryPolicy } from "../finding";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";
import { microvolt } from "../words";

const assess = ({ bench }: Pick<GatePlan, "bench">, policy: GatePolicy): readonly Found[] => {
  const point = bench.voltagePoint;
  const { value, source } = policy.voltagePointMicrovolt;
  // Rounded to a thousandth of a microvolt: 10502.2 − 10500.2 is 2 to a person, and a hair more to a float64.
  const off = point && Math.round((point.readMicrovolt - point.appliedMicrovolt) * 1000) / 1000;
  if (off !== null && Math.abs(off) <= value) return [];
  return [
    {
      code: "voltage-point",
      outcome: "breach",
      subject: "",
      reason:
        point === null || off === null
          ? "No voltage check point is recorded today."
          : `At ${microvolt(point.appliedMicrovolt)} the voltmeter is ${microvolt(off)} off; at most ${microvolt(value)} either way.`,
      remedy:
        point === null
          ? "Apply a known voltage in the range of the run and record what the voltmeter reads."
          : "Find out why, check again; if it stays, the voltmeter is suspect.",
      source,
    },
  ];
};

export const voltagePoint = {
  code: "voltage-point",
  heading: "same-day",
  fine: "The voltmeter reads the voltage check point right.",
  source: laboratoryPolicy,
  assess,
} as const satisfies GateCheck;
