import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";

const source = "ISO/IEC 17025:2017, 7.2.1.2 and 8.3.2";

const assess = ({ procedure }: Pick<GatePlan, "procedure">): readonly Found[] =>
  procedure === null || procedure.state === "current"
    ? []
    : [
        {
          code: "procedure-current",
          outcome: "breach",
          subject: "",
          reason: `${procedure.name} is ${procedure.state === "draft" ? "a draft" : "withdrawn"}.`,
          remedy: "Plan the run anew by the revision that is current.",
          source,
        },
      ];

export const procedureCurrent = {
  code: "procedure-current",
  heading: "equipment",
  fine: "The run follows the current revision of its procedure.",
  source,
  assess,
} as const satisfies GateCheck;
