import { loadFurnace } from "@/lib/data/furnace/furnace-store";
import { dueState, isoDay } from "@/lib/domain/calibration/due";
import type { ConfigurationKind } from "@/lib/domain/furnace/types";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

export const furnaceView = (actor: Actor, id: string, today: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const { configurations, ...furnace } = found(await loadFurnace(tx, id));
    return {
      ...furnace,
      mayChange: actor.kind !== "system" && may(actor.roles, "furnace.record"),
      configurations: configurations.map(({ characterisations, ...configuration }) => ({
        ...configuration,
        kind: configuration.kind as ConfigurationKind,
        due: dueState(characterisations[0] ? isoDay(characterisations[0].validUntil) : null, today),
        characterisations: characterisations.map((one) => ({
          id: one.id,
          performedOn: isoDay(one.performedOn),
          validUntil: isoDay(one.validUntil),
          uniformityHalfWidthCelsius: one.uniformityHalfWidthCelsius,
          statement: one.statement,
        })),
      })),
    };
  });

export type FurnaceView = Awaited<ReturnType<typeof furnaceView>>;
