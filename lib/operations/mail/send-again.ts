import { z } from "zod";
import { enqueueMail } from "@/lib/data/mail/enqueue-mail";
import { loadMail } from "@/lib/data/mail/mail-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { mailEvents } from "@/lib/domain/mail/events";
import { mailState } from "@/lib/domain/mail/mail-state";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

/** Tries a message that was not sent at once, and afresh, instead of when its turn comes. */
export const sendAgain = defineOperation({
  name: "mail/send-again",
  permission: "mail.manage",
  input: z.strictObject({ mailMessageId: z.uuid() }),
  perform: async ({ tx }, { mailMessageId }) => {
    const mail = await loadMail(tx, mailMessageId);
    if (!mail) throw new Refused({ code: "not-found", message: "This message is not here." });
    if (mailState(mail.outcomes) === "sent")
      throw new Refused({
        code: "wrong-state",
        message: "This message was sent; nothing was put into the queue. Reload to see when.",
      });
    await enqueueMail(tx, mailMessageId);
    return { value: undefined, events: [eventOf(mailEvents.sentAgain, mailMessageId, { kind: mail.kind })] };
  },
});
