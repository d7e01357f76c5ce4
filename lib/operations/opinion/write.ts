import { insertOpinion } from "@/lib/data/opinion/opinion-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { opinionEvents } from "@/lib/domain/opinion/events";
import { OpinionInput } from "@/lib/domain/opinion/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";
import { demandOpinable } from "./demand-opinable";

/** ISO/IEC 17025 7.8.7: by somebody authorised for it, with what it rests on; printed, and marked as an opinion. */
export const writeOpinion = defineOperation({
  name: "opinion/write",
  permission: "opinion.write",
  input: OpinionInput,
  perform: async ({ actor, now, tx }, { text, basis, ...place }) => {
    const authorId = personIdOf(actor);
    const { review, sensor, authorisation, standing } = await demandOpinable(tx, place, authorId, now);
    if (standing?.text === text && standing.basis === basis)
      throw new Refused({ code: "rule", message: "This is what stands there already." });
    await insertOpinion(tx, {
      ...{ runId: review.run.id, sensorId: sensor.id, customerId: sensor.customerId, text, basis },
      ...{ authorisationId: authorisation.id, authorId, writtenAt: now },
    });
    return {
      value: { tag: sensor.tag },
      events: [
        eventOf(opinionEvents.written, review.run.id, {
          ...{ run: review.run.number, sensor: sensor.tag, authorisationId: authorisation.id },
        }),
      ],
    };
  },
});
