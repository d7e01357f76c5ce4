import type { Tx } from "@/lib/data/in-scope";
import { messageIdOf } from "@/lib/domain/mail/message-id";
import type { Letter, MailKind, MailOutcome, MailTransportKind } from "@/lib/domain/mail/types";
import { enqueueMail } from "./enqueue-mail";

export type NewMail = {
  readonly id: string;
  readonly kind: MailKind;
  readonly personId: string | null;
  readonly recipient: string;
  readonly subject: string;
  readonly body: string;
  readonly digestId: string | null;
};

/** Stores a message and puts its sending into the queue: both with this transaction, or neither. */
export const insertMail = async (tx: Tx, mail: NewMail, publicUrl: string, now: Date): Promise<void> => {
  await tx.mailMessage.create({
    data: { ...mail, messageId: messageIdOf(mail.id, publicUrl), enqueuedAt: now },
  });
  await enqueueMail(tx, mail.id);
};

export type StoredMail = {
  readonly kind: MailKind;
  readonly letter: Letter;
  /** The first attempt first. */
  readonly outcomes: readonly MailOutcome[];
};

export const loadMail = async (tx: Tx, id: string): Promise<StoredMail | null> => {
  const row = await tx.mailMessage.findUnique({
    where: { id },
    include: { attempts: { orderBy: { id: "asc" }, select: { outcome: true } } },
  });
  if (!row) return null;
  const { messageId, recipient, subject, body, enqueuedAt } = row;
  return {
    kind: row.kind as MailKind,
    letter: { id, messageId, recipient, subject, body, writtenAt: enqueuedAt },
    outcomes: row.attempts.map(({ outcome }) => outcome as MailOutcome),
  };
};

export type NewAttempt = {
  readonly mailMessageId: string;
  readonly outcome: MailOutcome;
  readonly transport: MailTransportKind;
  readonly detail: string;
};

export const insertAttempt = async (tx: Tx, attempt: NewAttempt, now: Date): Promise<void> => {
  await tx.mailAttempt.create({ data: { ...attempt, happenedAt: now } });
};
