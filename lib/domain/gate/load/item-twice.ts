import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";

const source = "one thing cannot stand in two places";

const assess = ({ places }: Pick<GatePlan, "places">): readonly Found[] =>
  places.flatMap(({ kind, tag }, at) =>
    tag !== null && places.slice(0, at).some((earlier) => earlier.kind === kind && earlier.tag === tag)
      ? [
          {
            code: "item-twice",
            outcome: "breach",
            subject: tag,
            at,
            reason: "it stands in the load twice.",
            remedy: "Take one of the two rows out.",
            source,
          } as const,
        ]
      : [],
  );

export const itemTwice = {
  code: "item-twice",
  heading: "load",
  fine: "Nothing stands in the load twice.",
  source,
  assess,
} as const satisfies GateCheck;
