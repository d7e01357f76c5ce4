import type { Found, GateCheck } from "../finding";
import { laboratoryPolicy } from "../finding";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";
import { millimetre } from "../words";

const source =
  "the configuration's characterisation: its uniformity holds at the immersion it was measured at";

/** A sensor that is itself too short is another finding, with other ways out. */
const assess = (plan: GatePlan, policy: GatePolicy): readonly Found[] => {
  const wanted = plan.configuration.immersionMillimetre;
  const least = wanted - policy.immersionShortfallMillimetre.value;
  return plan.places.flatMap(({ kind, tag, place, immersionMillimetre }): readonly Found[] => {
    if (kind === "shorted") return [];
    const subject = tag ?? place;
    if (immersionMillimetre === null)
      return [
        {
          code: "immersion-not-stated",
          outcome: "warning",
          subject,
          reason: `its immersion is not stated; it counts as ${millimetre(wanted)}.`,
          remedy: "Measure it when it goes in.",
          source,
        },
      ];
    const length = plan.sensors.find((sensor) => sensor.tag === tag)?.build.lengthMillimetre;
    if (immersionMillimetre >= least || (length !== undefined && length < least)) return [];
    return [
      {
        code: "immersion",
        outcome: "breach",
        subject,
        reason: `it stands ${millimetre(immersionMillimetre)} deep; the best uniformity is at ${millimetre(wanted)}.`,
        remedy: "Push it in to the best uniformity.",
        source: `${source}; what still counts as the same: ${policy.immersionShortfallMillimetre.source}`,
      },
    ];
  });
};

export const immersion = {
  code: "immersion",
  heading: "immersion",
  fine: "Everything stands as deep as the furnace was characterised.",
  source: `${source}; ${laboratoryPolicy}`,
  assess,
} as const satisfies GateCheck;
