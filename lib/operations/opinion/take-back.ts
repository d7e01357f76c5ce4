import { insertOpinion } from "@/lib/data/opinion/opinion-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { opinionEvents } from "@/lib/domain/opinion/events";
import { OpinionTakenBack } from "@/lib/domain/opinion/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";
import { demandOpinable } from "./demand-opinable";

/** What was written stays on record; it is not printed. */
export const takeOpinionBack = defineOperation({
  name: "opinion/take-back",
  permission: "opinion.write",
  input: OpinionTakenBack,
  perform: async ({ actor, now, tx }, { reason, ...place }) => {
    const authorId = personIdOf(actor);
    const { review, sensor, authorisation, standing } = await demandOpinable(tx, place, authorId, now);
    if (!standing) throw new Refused({ code: "wrong-state", message: `No opinion stands on ${sensor.tag}.` });
    await insertOpinion(tx, {
      ...{
        runId: review.run.id,
        sensorId: sensor.id,
        customerId: sensor.customerId,
        text: "",
        basis: reason,
      },
      ...{ authorisationId: authorisation.id, authorId, writtenAt: now },
    });
    return {
      value: { tag: sensor.tag },
      events: [
        eventOf(opinionEvents.takenBack, review.run.id, {
          ...{ run: review.run.number, sensor: sensor.tag, reason },
        }),
      ],
    };
  },
});
