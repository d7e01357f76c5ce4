import type { Found, GateCheck } from "../finding";
import { outerDiameterOf } from "../outer-diameter";
import { immersionOf } from "../place-of";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";
import { millimetre } from "../words";

const source = "DAkkS-DKD-R 5-4, Annex B (block calibrators)";

/** A rule for block calibrators; in a furnace two immersions say more, so this only warns. */
const assess = (plan: GatePlan, policy: GatePolicy): readonly Found[] =>
  plan.sensors.flatMap(({ tag, build }) => {
    const diameter = outerDiameterOf(build);
    const here = immersionOf(plan, tag);
    const { value, source } = policy.immersionDiameters;
    return diameter === null || here >= value * diameter
      ? []
      : [
          {
            code: "immersion-in-diameters",
            outcome: "warning",
            subject: tag,
            reason: `${millimetre(here)} are less than ${value} times its ${millimetre(diameter)}: heat flows along it.`,
            remedy: "Measure at two immersions 20 to 30 mm apart and look at the difference.",
            source,
          } as const,
        ];
  });

export const immersionInDiameters = {
  code: "immersion-in-diameters",
  heading: "immersion",
  fine: "Every immersion is many diameters deep.",
  source,
  assess,
} as const satisfies GateCheck;
