import { loadFurnaces } from "@/lib/data/furnace/furnace-store";
import { dueState, isoDay } from "@/lib/domain/calibration/due";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

/** Furnaces with their configurations, each with the characterisation that is the newest. */
export const furnacesView = (actor: Actor, today: string) =>
  answer(actor, "laboratory.read", async (tx) =>
    (await loadFurnaces(tx)).map((furnace) => ({
      id: furnace.id,
      tag: furnace.tag,
      name: furnace.name,
      minimumCelsius: furnace.minimumCelsius,
      maximumCelsius: furnace.maximumCelsius,
      configurations: furnace.configurations.map((configuration) => {
        const [newest] = configuration.characterisations;
        const validUntil = newest ? isoDay(newest.validUntil) : null;
        return {
          id: configuration.id,
          name: configuration.name,
          validUntil,
          due: dueState(validUntil, today),
        };
      }),
    })),
  );
