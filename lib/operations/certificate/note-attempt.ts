import { z } from "zod";
import { eventOf } from "@/lib/domain/audit/define-event";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { issueStepNames } from "@/lib/domain/certificate/issue-step";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** A step of making the files that did not succeed, and why. The certificate keeps its number and stays pending. */
export const noteAttempt = defineOperation({
  name: "certificate/note-attempt",
  permission: "system",
  input: z.strictObject({ certificateId: z.uuid(), step: z.enum(issueStepNames), detail: z.string() }),
  perform: async ({ now, tx }, { certificateId, step, detail }) => {
    const certificate = await tx.certificate.findUnique({
      where: { id: certificateId },
      select: { customerId: true, number: true },
    });
    if (!certificate) throw new Refused({ code: "not-found", message: "This certificate is not here." });
    const { customerId, number } = certificate;
    await tx.certificateAttempt.create({
      data: { certificateId, customerId, step, detail, happenedAt: now },
    });
    return {
      value: null,
      events: [eventOf(certificateEvents.attemptFailed, certificateId, { number, step })],
    };
  },
});
