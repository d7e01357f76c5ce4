import type { Found, GateCheck } from "../finding";
import { laboratoryPolicy } from "../finding";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";

const assess = ({ bench }: Pick<GatePlan, "bench">, { warmUpHours }: GatePolicy): readonly Found[] =>
  bench.warmUpHours !== null && bench.warmUpHours >= warmUpHours.value
    ? []
    : [
        {
          code: "warm-up",
          outcome: "breach",
          subject: "",
          reason:
            bench.warmUpHours === null
              ? "Nobody has recorded today how long voltmeter and scanner have been on."
              : `Voltmeter and scanner have been on for ${bench.warmUpHours} h; at least ${warmUpHours.value} h are asked.`,
          remedy: "Let them warm up, then record it.",
          source: warmUpHours.source,
        },
      ];

export const warmUp = {
  code: "warm-up",
  heading: "same-day",
  fine: "Voltmeter and scanner are warm.",
  source: laboratoryPolicy,
  assess,
} as const satisfies GateCheck;
