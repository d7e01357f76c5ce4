import type { Found, GateCheck } from "../finding";
import { commonPractice } from "../finding";
import { isBaseMetal } from "../metal-of";
import { immersionOf } from "../place-of";
import type { GatePlan } from "../plan";
import { millimetre } from "../words";

/** Used base metal pulled back puts wire that has aged into the gradient: same or greater immersion than ever before. */
const assess = (plan: GatePlan): readonly Found[] =>
  plan.sensors.flatMap(({ tag, type, history }) => {
    const here = immersionOf(plan, tag);
    const before = history.deepestMillimetre;
    return before === null || !isBaseMetal(type) || here >= before
      ? []
      : [
          {
            code: "shallower-than-used",
            outcome: "breach",
            subject: tag,
            reason: `it has stood ${millimetre(before)} deep and would stand ${millimetre(here)} deep: aged wire would lie in the gradient.`,
            remedy: "Give it the same or a greater immersion, or agree on an in-situ comparison.",
            source: commonPractice,
          } as const,
        ];
  });

export const shallowerThanUsed = {
  code: "shallower-than-used",
  heading: "immersion",
  fine: "No base metal stands less deep than it is known to have stood before.",
  source: commonPractice,
  assess,
} as const satisfies GateCheck;
