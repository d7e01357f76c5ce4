import { z } from "zod";
import { insertAmendmentDecision } from "@/lib/data/amendment/amendment-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { seenWhole } from "@/lib/domain/typed-text";
import { defineOperation } from "../operation";
import { demandAsked } from "./demand-asked";

/** What was asked for is not done, for a reason: the certificate stays as it is. */
export const dropAmendment = defineOperation({
  name: "certificate/drop-amendment",
  permission: "certificate.amend",
  input: z.strictObject({
    amendmentId: z.uuid(),
    reason: z
      .string()
      .trim()
      .min(10, "Say in a sentence why it is not done.")
      .max(1000)
      .superRefine(seenWhole),
  }),
  perform: async ({ actor, now, tx }, { amendmentId, reason }) => {
    const { amendment, certificate } = await demandAsked(tx, amendmentId);
    const { customerId, number } = certificate;
    await insertAmendmentDecision(tx, {
      ...{ amendmentId, customerId, outcome: "dropped", reason },
      ...{ decidedById: personIdOf(actor), decidedAt: now },
    });
    const { kind } = amendment;
    return {
      value: { number },
      events: [eventOf(certificateEvents.amendmentDropped, certificate.id, { number, kind })],
    };
  },
});
