import { readChoices } from "@/lib/domain/question/read-choices";
import type { Tx } from "../in-scope";
import { isUuid } from "../is-uuid";
import { linkHash } from "./ask-question";

/** One question with what it is about and whether it still waits; null: not there. */
export const loadQuestion = async (tx: Tx, id: string) => {
  const row = isUuid(id) ? await tx.question.findUnique({ where: { id } }) : null;
  if (!row) return null;
  const order = await tx.order.findUniqueOrThrow({ where: { id: row.orderId }, select: { number: true } });
  const sensor = row.sensorId
    ? await tx.sensor.findUniqueOrThrow({ where: { id: row.sensorId }, select: { tag: true, serial: true } })
    : null;
  const answer = await tx.answer.findUnique({ where: { questionId: id } });
  const release = row.holdId ? await tx.holdRelease.findUnique({ where: { holdId: row.holdId } }) : null;
  return {
    id,
    customerId: row.customerId,
    orderNumber: order.number,
    tag: sensor?.tag ?? "",
    serial: sensor?.serial ?? "",
    text: row.text,
    choices: readChoices(row.choices),
    askedAt: row.askedAt,
    isAnswered: answer !== null,
    isSettled: release !== null,
    answer,
  };
};

export type LoadedQuestion = NonNullable<Awaited<ReturnType<typeof loadQuestion>>>;

/** The question that the link in a mail opens, while it does. */
export const loadLinkedQuestion = async (tx: Tx, token: string, now: Date) => {
  const link = await tx.customerLink.findUnique({ where: { tokenHash: linkHash(token) } });
  if (link?.purpose !== "answer" || link.expiresAt <= now) return null;
  return loadQuestion(tx, link.subjectId);
};
