import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";
import { diameterFound } from "./diameter-found";

const source = "suggested upper temperature limits by wire size, ASTM E230/E230M";

/** Wire in a tube or bare; what lies in pressed mineral insulation has its own table. */
const assess = ({ sensors, setpointsCelsius }: GatePlan, policy: GatePolicy): readonly Found[] => {
  const highest = Math.max(...setpointsCelsius);
  return sensors.flatMap((sensor): readonly Found[] => {
    const { tag, type, build, protection } = sensor;
    if (build.sheath === "mineral-insulated") return [];
    // Nobody said how it is sheathed: that alone is asked for.
    if (build.sheath === undefined && protection === "metal-sheath") return [];
    if (build.wireMillimetre === undefined)
      return [
        {
          code: "wire-not-stated",
          outcome: "warning",
          subject: tag,
          reason: "the diameter of its wire is not stated.",
          remedy: "Measure it, and write it into the sensor's record: thin wire does not last.",
          source: policy.wire.source,
        },
      ];
    const what = `type ${type} wire of`;
    return diameterFound("wire-limit", sensor, what, build.wireMillimetre, highest, policy.wire);
  });
};

export const wireLimit = {
  code: "wire-limit",
  heading: "materials",
  fine: "Every wire is thick enough for the highest setpoint.",
  source,
  assess,
} as const satisfies GateCheck;
