import { insertCustodyEvent } from "@/lib/data/custody/insert-custody-event";
import { demandRun } from "@/lib/data/run/demand-run";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { demandSaved } from "@/lib/data/versioned";
import { eventOf } from "@/lib/domain/audit/define-event";
import { partsEvents } from "@/lib/domain/parts/events";
import { AbandonRunInput } from "@/lib/domain/parts/schema";
import { demand } from "@/lib/domain/refusal";
import { decideAbandon } from "@/lib/domain/run/decide-abandon";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** A run that comes to nothing: its sensors wait for another one, its readings stay as they are. */
export const abandonRun = defineOperation({
  name: "run/abandon",
  permission: "run.perform",
  input: AbandonRunInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    demand(decideAbandon(run));
    demandSaved(
      await tx.run.updateMany({
        where: { id: run.id, version: input.version },
        data: { state: "abandoned", version: { increment: 1 } },
      }),
    );
    const sensorIds = run.places.flatMap(({ sensorId }) => sensorId ?? []);
    const sensors = await setSensorState(tx, sensorIds, ["loaded", "measured", "evaluated"], "received");
    await insertCustodyEvent(tx, {
      sensorIds,
      kind: "from-furnace",
      fromWhom: run.number,
      runId: run.id,
      recordedById: personIdOf(actor),
      happenedAt: now,
    });
    return {
      value: { number: run.number },
      events: [
        eventOf(partsEvents.abandoned, run.id, {
          run: run.number,
          sensors: sensors.map(({ tag }) => tag).toSorted(),
          reason: input.reason,
        }),
      ],
    };
  },
});
