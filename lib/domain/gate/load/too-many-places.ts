import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";

type Facts = {
  readonly places: readonly Pick<GatePlan["places"][number], "kind">[];
  readonly configuration: Pick<GatePlan["configuration"], "name" | "places">;
};

const source = "the furnace configuration's record";

const assess = ({ places, configuration }: Facts): readonly Found[] => {
  const occupied = places.filter(({ kind }) => kind !== "shorted").length;
  return occupied <= configuration.places
    ? []
    : [
        {
          code: "too-many-places",
          outcome: "breach",
          subject: "",
          reason: `${configuration.name} has ${configuration.places} places; ${occupied} are filled here.`,
          remedy: "Take some out.",
          source,
        },
      ];
};

export const tooManyPlaces = {
  code: "too-many-places",
  heading: "load",
  fine: "The configuration has room for the load.",
  source,
  assess,
} as const satisfies GateCheck;
