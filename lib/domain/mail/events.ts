import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { mailKindLabels } from "./labels";
import { mailKinds, mailTransports } from "./types";

const kind = z.enum(mailKinds);
const about = (value: z.infer<typeof kind>) => `the message “${mailKindLabels[value].toLowerCase()}”`;

/** Facts about this noun that the audit log can hold; never to whom: an address is a person's. */
export const mailEvents = {
  sent: defineEvent({
    action: "mail.sent",
    entityKind: "mail",
    payload: z.strictObject({ kind, transport: z.enum(mailTransports), failures: z.number().int().min(0) }),
    sentence: (p) =>
      `${p.transport === "smtp" ? "sent" : "wrote as a file"} ${about(p.kind)}${p.failures > 0 ? `, after ${p.failures} failed attempts` : ""}`,
  }),
  failed: defineEvent({
    action: "mail.failed",
    entityKind: "mail",
    payload: z.strictObject({ kind, transport: z.enum(mailTransports), givenUp: z.boolean() }),
    sentence: (p) => `could not send ${about(p.kind)}${p.givenUp ? ", and gave up" : " yet"}`,
  }),
  sentAgain: defineEvent({
    action: "mail.sent-again",
    entityKind: "mail",
    payload: z.strictObject({ kind }),
    sentence: (p) => `put ${about(p.kind)} into the queue again`,
  }),
} as const;
