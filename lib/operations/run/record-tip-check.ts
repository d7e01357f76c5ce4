import { demandRun } from "@/lib/data/run/demand-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand, Refused } from "@/lib/domain/refusal";
import { runEvents } from "@/lib/domain/run/events";
import { RecordTipCheckInput } from "@/lib/domain/run/schema";
import { demandOpen } from "@/lib/domain/run/states";
import { assessTipCheck } from "@/lib/domain/run/tip-check";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** One tip was warmed: what its channel showed, and whether any other moved. A second check follows the first; both stay. */
export const recordTipCheck = defineOperation({
  name: "run/record-tip-check",
  permission: "run.perform",
  input: RecordTipCheckInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    demand(demandOpen(run));
    const place = run.places.find((one) => one.place === input.place);
    if (!place || place.kind === "shorted")
      throw new Refused({
        code: "invalid",
        message: "Nothing was stored.",
        fields: { place: "Choose a place with a sensor or a reference in it." },
      });
    const seen = { riseMicrovolt: input.riseMicrovolt, onlyThisChannel: input.onlyThisChannel };
    await tx.tipCheck.create({
      data: {
        ...seen,
        runId: run.id,
        loadPlaceId: place.id,
        checkedById: personIdOf(actor),
        checkedAt: now,
      },
    });
    const state = assessTipCheck(seen);
    return {
      value: { place: place.place, state },
      events: [
        eventOf(runEvents.tipCheckRecorded, run.id, {
          run: run.number,
          place: place.place,
          channel: place.channel,
          ...seen,
          passed: state === "passed",
        }),
      ],
    };
  },
});
