import { randomUUID } from "node:crypto";
import type { NewsLetter } from "@/lib/domain/mail/letters/order-news";
import type { MailKind } from "@/lib/domain/mail/types";
import type { Tx } from "../in-scope";
import { insertMail } from "./mail-store";
import type { Recipient } from "./recipients";

/** One letter to each, in the queue with this transaction. */
export const writeEach = async (
  tx: Tx,
  recipients: readonly Recipient[],
  kind: MailKind,
  compose: (recipient: Recipient) => NewsLetter,
  publicUrl: string,
  now: Date,
): Promise<void> => {
  for (const recipient of recipients) {
    const { personId, email } = recipient;
    const mail = { id: randomUUID(), kind, personId, recipient: email, digestId: null };
    await insertMail(tx, { ...mail, ...compose(recipient) }, publicUrl, now);
  }
};
