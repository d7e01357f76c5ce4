import type { Found, GateCheck } from "../finding";
import { isBaseMetal } from "../metal-of";
import type { GatePlan } from "../plan";

const source = "ASTM E230/E230M, notes: recalibrating used base metal is advised against";

const assess = ({ sensors }: GatePlan): readonly Found[] =>
  sensors.flatMap(({ tag, type, build }): readonly Found[] => {
    if (!isBaseMetal(type) || build.isUsed === false) return [];
    const found = { subject: tag, source };
    return build.isUsed === undefined
      ? [
          {
            ...found,
            code: "use-not-stated",
            outcome: "warning",
            reason: "whether it was used before is not stated.",
            remedy: "Ask the customer: used base metal is calibrated by agreement only.",
          },
        ]
      : [
          {
            ...found,
            code: "used-base-metal",
            outcome: "breach",
            reason: "used base metal: what it gives here need not be what it gives in its own gradient.",
            remedy: "Write who agreed for the customer and when; a comparison in place of use says more.",
          },
        ];
  });

export const usedBaseMetal = {
  code: "used-base-metal",
  heading: "metal",
  fine: "No base metal was used before, or it is agreed.",
  source,
  assess,
} as const satisfies GateCheck;
