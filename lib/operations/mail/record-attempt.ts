import { z } from "zod";
import { insertAttempt, loadMail } from "@/lib/data/mail/mail-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { mailEvents } from "@/lib/domain/mail/events";
import { mailState } from "@/lib/domain/mail/mail-state";
import { mailOutcomes, mailTransports } from "@/lib/domain/mail/types";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** How an attempt to send a message went, as a later row beside it. */
export const recordAttempt = defineOperation({
  name: "mail/record-attempt",
  permission: "system",
  input: z.strictObject({
    mailMessageId: z.uuid(),
    outcome: z.enum(mailOutcomes),
    transport: z.enum(mailTransports),
    detail: z.string().min(1),
  }),
  perform: async ({ now, tx }, input) => {
    const mail = await loadMail(tx, input.mailMessageId);
    if (!mail) throw new Refused({ code: "not-found", message: "This message is not here." });
    if (mailState(mail.outcomes) === "sent")
      throw new Refused({ code: "wrong-state", message: "This message was sent already." });
    await insertAttempt(tx, input, now);
    const { kind } = mail;
    const { transport, outcome } = input;
    return {
      value: undefined,
      events: [
        outcome === "sent"
          ? eventOf(mailEvents.sent, input.mailMessageId, { kind, transport, failures: mail.outcomes.length })
          : eventOf(mailEvents.failed, input.mailMessageId, {
              kind,
              transport,
              givenUp: outcome === "given-up",
            }),
      ],
    };
  },
});
