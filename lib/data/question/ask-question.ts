import { randomBytes, randomUUID } from "node:crypto";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { questionLetter } from "@/lib/domain/mail/letters/question";
import { questionEvents } from "@/lib/domain/question/events";
import { hex } from "../hex";
import type { Tx } from "../in-scope";
import { insertMail } from "../mail/mail-store";
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

/** Stores a question, a link that answers it once, and the mail that carries the link; answers the link's token and the event. */
export const askQuestion = async (
  tx: Tx,
  { orderNumber, sensor, choices, ...asked }: NewQuestion,
  publicUrl: string,
): Promise<{ readonly id: string; readonly token: string; readonly event: AuditEvent }> => {
  const { id } = await tx.question.create({
    data: { ...asked, sensorId: sensor?.id ?? null, choices: JSON.stringify(choices) },
    select: { id: true },
  });
  const { customerId, orderId, askedAt, text } = asked;
  const customer = await tx.customer.findUniqueOrThrow({ where: { id: customerId } });
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
      recipient: customer.email,
      expiresAt,
      madeAt: askedAt,
    },
  });
  const letter = questionLetter({
    laboratory: laboratory?.name ?? "The laboratory",
    orderNumber,
    contactName: customer.contactName,
    link: new URL(`/answer/${token}`, publicUrl).href,
    expiresOn: isoDay(expiresAt),
  });
  const mail = { id: randomUUID(), kind: "question" as const, personId: null, digestId: null };
  await insertMail(tx, { ...mail, recipient: customer.email, ...letter }, publicUrl, askedAt);
  const payload = { orderNumber, tag: sensor?.tag ?? "", text, choices: [...choices] };
  return { id, token, event: eventOf(questionEvents.asked, id, payload) };
};
