import type { GatePlan } from "./plan";

/** How deep a thing of the load stands: as written for its place, or as deep as the configuration was characterised. */
export const immersionOf = (
  plan: {
    readonly places: GatePlan["places"];
    readonly configuration: Pick<GatePlan["configuration"], "immersionMillimetre">;
  },
  tag: string,
): number =>
  plan.places.find((place) => place.tag === tag)?.immersionMillimetre ??
  plan.configuration.immersionMillimetre;
