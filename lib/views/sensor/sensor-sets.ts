import { annealsOf } from "@/lib/data/parts/anneals-of";
import { setStanding } from "@/lib/data/parts/set-standing";
import { measuredSetLabels, readLineOptions } from "@/lib/domain/order/options";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";

/** Which sets a sensor is ordered in, what was annealed, and whether it is to be annealed now. */
export const sensorSetsView = (actor: Actor, tag: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const sensor = found(await tx.sensor.findUnique({ where: { tag }, include: { line: true } }));
    const { sets, anneal } = readLineOptions(sensor.line.options);
    const standing = (await setStanding(tx, [sensor])).get(sensor.id);
    const waits = sensor.state === "received" && standing?.next === null;
    return {
      tag,
      isAsked: sets !== "as-received",
      sets: measuredSetLabels[sets],
      ordered: anneal ?? null,
      anneals: (await annealsOf(tx, [sensor.id])).get(sensor.id) ?? [],
      waits,
      mayAnneal: waits && actor.kind !== "system" && may(actor.roles, "run.perform"),
    };
  });

export type SensorSets = Awaited<ReturnType<typeof sensorSetsView>>;
