import { loadCharacterisationRuns } from "@/lib/data/furnace/characterisation-run-store";
import { loadFurnace } from "@/lib/data/furnace/furnace-store";
import { dueState, isoDay } from "@/lib/domain/calibration/due";
import { readBores } from "@/lib/domain/furnace/bores";
import { readFigures } from "@/lib/domain/furnace/characterisation-figures";
import { decisionState } from "@/lib/domain/furnace/decision-state";
import type { ConfigurationKind, ControllerSetpoint } from "@/lib/domain/furnace/types";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

type Stored = NonNullable<Awaited<ReturnType<typeof loadFurnace>>>;
type StoredCharacterisation = Stored["configurations"][number]["characterisations"][number];

const characterisationOf = (one: StoredCharacterisation, actor: Actor) => {
  const state = decisionState(one.decisions);
  const last = one.decisions.at(-1);
  return {
    id: one.id,
    performedOn: isoDay(one.performedOn),
    validUntil: isoDay(one.validUntil),
    uniformityHalfWidthCelsius: one.uniformityHalfWidthCelsius,
    statement: one.statement,
    figures: one.figures === null ? null : readFigures(one.figures),
    characterisationRunId: one.characterisationRunId,
    state,
    decidedOn: last ? isoDay(last.decidedAt) : null,
    reason: last?.reason ?? "",
    mayDecide:
      state === "waiting" &&
      actor.kind !== "system" &&
      may(actor.roles, "furnace.accept") &&
      one.recordedById !== actor.personId,
  };
};

/** One furnace with its configurations, what each was found to be, and what is being measured of it. */
export const furnaceView = (actor: Actor, id: string, today: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const { configurations, controllerSetpoints, ...furnace } = found(await loadFurnace(tx, id));
    const runs = await loadCharacterisationRuns(tx, furnace.id);
    return {
      ...furnace,
      controllerSetpoints: JSON.parse(controllerSetpoints) as readonly ControllerSetpoint[],
      mayChange: actor.kind !== "system" && may(actor.roles, "furnace.record"),
      configurations: configurations.map(({ characterisations, bores, ...configuration }) => {
        const read = characterisations.map((one) => characterisationOf(one, actor));
        const counting = read.find(({ state, performedOn }) => state === "accepted" && performedOn <= today);
        return {
          ...configuration,
          kind: configuration.kind as ConfigurationKind,
          bores: readBores(bores),
          due: dueState(counting?.validUntil ?? null, today),
          countingId: counting?.id ?? null,
          characterisations: read,
          runs: runs
            .filter(({ configurationId }) => configurationId === configuration.id)
            .map((run) => ({
              id: run.id,
              number: run.number,
              state: run.state,
              plannedOn: isoDay(run.createdAt),
            })),
        };
      }),
    };
  });

export type FurnaceView = Awaited<ReturnType<typeof furnaceView>>;
export type ConfigurationView = FurnaceView["configurations"][number];
