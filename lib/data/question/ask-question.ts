import { randomBytes } from "node:crypto";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { questionLetter } from "@/lib/domain/mail/letters/question";
import { questionEvents } from "@/lib/domain/question/events";
import { hex } from "../hex";
import type { Tx } from "../in-scope";
import { orderRecipients, type Recipient } from "../mail/recipients";
import { writeEach } from "../mail/write-each";
import { sha256 } from "../sha256";

/** How long the link in the mail opens the question. */
const linkDays = 30;

export const linkHash = (token: string): string => hex(sha256(new TextEncoder().encode(token)));

export type NewQuestion = {
  readonly customerId: string;
  readonly orderId: string;
  readonly orderNumber: string;
  readonly sensor: { readonly id: string; readonly tag: string } | null;
  readonly holdId: string | null;
  readonly text: string;
  readonly choices: readonly string[];
  readonly askedById: string;
  readonly askedAt: Date;
};

type Mailed = Pick<NewQuestion, "customerId" | "orderId" | "orderNumber" | "askedAt"> & {
  readonly id: string;
};

/** A link of their own, and the mail that carries it: its token is in the mail and nowhere else. */
const mailQuestion = async (
  tx: Tx,
  { id, customerId, orderId, orderNumber, askedAt }: Mailed,
  recipient: Recipient,
  publicUrl: string,
): Promise<string> => {
  const laboratory = await tx.laboratory.findFirst({ select: { name: true } });
  const token = randomBytes(32).toString("base64url");
  const expiresAt = new Date(askedAt.getTime() + linkDays * 86_400_000);
  await tx.customerLink.create({
    data: {
      tokenHash: linkHash(token),
      customerId,
      orderId,
      purpose: "answer",
      subjectId: id,
      recipient: recipient.email,
      expiresAt,
      madeAt: askedAt,
    },
  });
  const compose = ({ name }: Recipient) =>
    questionLetter({
      laboratory: laboratory?.name ?? "The laboratory",
      orderNumber,
      contactName: name,
      link: new URL(`/answer/${token}`, publicUrl).href,
      expiresOn: isoDay(expiresAt),
    });
  await writeEach(tx, [recipient], "question", compose, publicUrl, askedAt);
  return token;
};

/**
 * Stores a question, and mails a link that answers it to each who asked for the work; the first answer counts. Answers
 * the first link's token and the event.
 */
export const askQuestion = async (
  tx: Tx,
  { orderNumber, sensor, choices, ...asked }: NewQuestion,
  publicUrl: string,
): Promise<{ readonly id: string; readonly token: string; readonly event: AuditEvent }> => {
  const { id } = await tx.question.create({
    data: { ...asked, sensorId: sensor?.id ?? null, choices: JSON.stringify(choices) },
    select: { id: true },
  });
  const { customerId, text } = asked;
  const tokens: string[] = [];
  for (const recipient of await orderRecipients(tx, customerId, [orderNumber]))
    tokens.push(await mailQuestion(tx, { ...asked, id, orderNumber }, recipient, publicUrl));
  const [token = ""] = tokens;
  const payload = { orderNumber, tag: sensor?.tag ?? "", text, choices: [...choices] };
  return { id, token, event: eventOf(questionEvents.asked, id, payload) };
};
