import { insertCustodyEvent } from "@/lib/data/custody/insert-custody-event";
import { countUses } from "@/lib/data/equipment/count-uses";
import { demandUndisturbed } from "@/lib/data/order/demand-undisturbed";
import { sensorsGone } from "@/lib/data/parts/sensors-gone";
import { drawSample } from "@/lib/data/review/draw-sample";
import { demandRun } from "@/lib/data/run/demand-run";
import { evaluationStanding } from "@/lib/data/run/evaluation-standing";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { demandSaved } from "@/lib/data/versioned";
import { eventOf } from "@/lib/domain/audit/define-event";
import { equipmentEvents } from "@/lib/domain/equipment/events";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideSubmit } from "@/lib/domain/run/decide-submit";
import { runEvents } from "@/lib/domain/run/events";
import { openSetpoints } from "@/lib/domain/run/open-setpoints";
import { SubmitRunInput } from "@/lib/domain/run/schema";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Hands the run over to the signatory, with its last evaluation. */
export const submitRun = defineOperation({
  name: "run/submit",
  permission: "run.perform",
  input: SubmitRunInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    await demandUndisturbed(tx, run);
    // The stored text has no readings in it, so none need be loaded to see whether anything changed.
    const loaded = await loadEvidence(tx, run.number, { channels: [] });
    if (!loaded) throw new Refused({ code: "not-found", message: `There is no run ${run.number}.` });
    const { standing, sensors } = loaded;
    const { standing: evaluation, last } = await evaluationStanding(tx, loaded);
    const open = openSetpoints(
      run.setpoints,
      sensors.map(({ id }) => id),
      standing.windows,
      standing.states,
    );
    demand(
      decideSubmit({
        run,
        tips: run.places
          .filter(({ kind }) => kind !== "shorted")
          .map(({ id, place }) => ({
            place,
            check: standing.tips.find(({ loadPlaceId }) => loadPlaceId === id) ?? null,
          })),
        tipCheckReason: input.tipCheckReason,
        openSetpointsCelsius: open.map(({ celsius }) => celsius),
        evaluation,
      }),
    );
    if (!last) throw new Error("a run without evaluation passed decideSubmit");
    demandSaved(
      await tx.run.updateMany({
        where: { id: run.id, version: input.version },
        data: { state: "submitted", version: { increment: 1 } },
      }),
    );
    await tx.reviewDecision.create({
      data: {
        runId: run.id,
        evaluationId: last.id,
        decision: "submitted",
        reason: input.tipCheckReason,
        decidedById: personIdOf(actor),
        decidedAt: now,
      },
    });
    const drawn = await drawSample(tx, run, last, now);
    const gone = await sensorsGone(tx, run.id);
    const ready = sensors
      .filter(({ id, state }) => !gone.has(id) && state === "evaluated")
      .map(({ id }) => id);
    if (ready.length > 0) await setSensorState(tx, ready, ["evaluated"], "in-review");
    await insertCustodyEvent(tx, {
      // Handed over again after it was returned, it has been out since the first time.
      sensorIds: run.state === "returned" ? [] : sensors.map(({ id }) => id),
      kind: "from-furnace",
      fromWhom: run.number,
      runId: run.id,
      recordedById: personIdOf(actor),
      happenedAt: now,
    });
    const uses = await countUses(tx, run, now);
    const submitted = eventOf(runEvents.submitted, run.id, {
      run: run.number,
      evaluation: last.sequence,
      tipCheckReason: input.tipCheckReason,
    });
    const counted =
      uses.length > 0
        ? [eventOf(equipmentEvents.usesCounted, run.id, { run: run.number, uses: [...uses] })]
        : [];
    // What was done stands last, after what it brought with it.
    const [first, ...rest] = [...drawn, ...counted, submitted];
    return { value: { number: run.number }, events: [first ?? submitted, ...rest] };
  },
});
