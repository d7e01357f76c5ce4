import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";

const source = "two things cannot stand in one place";

const assess = ({ places }: Pick<GatePlan, "places">): readonly Found[] =>
  places.flatMap(({ place }, at) =>
    places.slice(0, at).some((earlier) => earlier.place === place)
      ? [
          {
            code: "place-twice",
            outcome: "breach",
            subject: place,
            at,
            reason: `Place ${place} stands in the load twice.`,
            remedy: "Give it a place of its own.",
            source,
          } as const,
        ]
      : [],
  );

export const placeTwice = {
  code: "place-twice",
  heading: "load",
  fine: "Every place is filled once.",
  source,
  assess,
} as const satisfies GateCheck;
