import { loadFurnaces } from "@/lib/data/furnace/furnace-store";
import { dueState, isoDay } from "@/lib/domain/calibration/due";
import { decisionState } from "@/lib/domain/furnace/decision-state";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

/** Furnaces with their configurations, each with the newest characterisation that was accepted. */
export const furnacesView = (actor: Actor, today: string) =>
  answer(actor, "laboratory.read", async (tx) =>
    (await loadFurnaces(tx)).map((furnace) => ({
      id: furnace.id,
      tag: furnace.tag,
      name: furnace.name,
      minimumCelsius: furnace.minimumCelsius,
      maximumCelsius: furnace.maximumCelsius,
      configurations: furnace.configurations.map((configuration) => {
        const counting = configuration.characterisations.find(
          ({ decisions, performedOn }) =>
            decisionState(decisions) === "accepted" && isoDay(performedOn) <= today,
        );
        const validUntil = counting ? isoDay(counting.validUntil) : null;
        return {
          id: configuration.id,
          name: configuration.name,
          validUntil,
          due: dueState(validUntil, today),
          isWaiting: configuration.characterisations.some(
            ({ decisions }) => decisionState(decisions) === "waiting",
          ),
        };
      }),
    })),
  );
