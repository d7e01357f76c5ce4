import type { GateCheck } from "../finding";
import type { GatePlan } from "../plan";

type Facts = { readonly configuration: Pick<GatePlan["configuration"], "furnaceProblem"> };

const source = "ISO/IEC 17025:2017, 6.4.3, 6.4.4 and 6.4.9";

/** The furnace is equipment too: verified, not suspect, its maintenance done. */
export const furnaceInService = {
  code: "furnace-in-service",
  heading: "equipment",
  fine: "The furnace is in service.",
  source,
  assess: ({ configuration: { furnaceProblem } }: Facts) =>
    furnaceProblem === null
      ? []
      : [
          {
            code: "furnace-in-service",
            outcome: "breach",
            subject: "",
            reason: furnaceProblem,
            remedy: "",
            source,
          },
        ],
} as const satisfies GateCheck;
