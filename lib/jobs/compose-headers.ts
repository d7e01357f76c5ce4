import type { SendMailOptions } from "nodemailer";
import type { Carrier } from "@/lib/operations/mail/deliver";

type Letter = Parameters<Carrier["carry"]>[0];

/** The letter as the mail library takes it: one recipient, plain text, marked as written by a program (RFC 3834). */
export const composeHeaders = (letter: Letter, from: string): SendMailOptions => ({
  // As objects: an address given as text is parsed, and could turn out to be two.
  from: { name: "", address: from },
  to: { name: "", address: letter.recipient },
  subject: letter.subject,
  // Lines end as RFC 5322 wants them, in a file too.
  text: letter.body.replaceAll(/\r?\n/g, "\r\n"),
  messageId: letter.messageId,
  date: letter.writtenAt,
  headers: { "Auto-Submitted": "auto-generated" },
  disableFileAccess: true,
  disableUrlAccess: true,
});
