import type { NewsLetter } from "@/lib/domain/mail/letters/order-news";
import type { MailKind } from "@/lib/domain/mail/types";
import type { Tx } from "../in-scope";
import { publicUrl } from "../public-url";
import { customerRecipients, type Recipient } from "./recipients";
import { writeEach } from "./write-each";

/** One letter to each, in the queue with this transaction. Answers how many; none where people do not reach this process. */
export const writeTo = async (
  tx: Tx,
  recipients: readonly Recipient[],
  kind: MailKind,
  compose: (recipient: Recipient, origin: string) => NewsLetter,
  now: Date,
): Promise<number> => {
  const origin = publicUrl();
  if (origin === null) return 0;
  await writeEach(tx, recipients, kind, (recipient) => compose(recipient, origin), origin, now);
  return recipients.length;
};

/** A letter to each person of a customer who may order. */
export const tellCustomer = async (
  tx: Tx,
  customerId: string,
  kind: MailKind,
  compose: (recipient: Recipient, origin: string) => NewsLetter,
  now: Date,
): Promise<number> => writeTo(tx, await customerRecipients(tx, customerId), kind, compose, now);
