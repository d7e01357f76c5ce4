import { readChoices } from "@/lib/domain/question/read-choices";
import type { Tx } from "../in-scope";

/** Questions that wait for the customer, the oldest first: of one order, or of all of theirs. */
export const loadOpenQuestions = async (tx: Tx, where: { readonly orderId?: string } = {}) => {
  const questions = await tx.question.findMany({ where, orderBy: [{ askedAt: "asc" }, { id: "asc" }] });
  const answered = await tx.answer.findMany({
    where: { questionId: { in: questions.map(({ id }) => id) } },
    select: { questionId: true },
  });
  const settled = await tx.holdRelease.findMany({
    where: { holdId: { in: questions.flatMap(({ holdId }) => holdId ?? []) } },
    select: { holdId: true },
  });
  const closed = new Set([
    ...answered.map(({ questionId }) => questionId),
    ...questions.flatMap(({ id, holdId }) => (settled.some((one) => one.holdId === holdId) ? [id] : [])),
  ]);
  const open = questions.filter(({ id }) => !closed.has(id));
  const orders = await tx.order.findMany({
    where: { id: { in: open.map(({ orderId }) => orderId) } },
    select: { id: true, number: true },
  });
  const sensors = await tx.sensor.findMany({
    where: { id: { in: open.flatMap(({ sensorId }) => sensorId ?? []) } },
    select: { id: true, serial: true },
  });
  return open.map(({ id, orderId, sensorId, text, choices, askedAt }) => ({
    ...{ id, text, choices: readChoices(choices), askedAt },
    orderNumber: orders.find((order) => order.id === orderId)?.number ?? "",
    serial: sensors.find((sensor) => sensor.id === sensorId)?.serial ?? "",
  }));
};
