import { readChoices } from "@/lib/data/question/load-question";
import type { AnswerWay } from "@/lib/domain/question/labels";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "../view";

/** What the laboratory asks this customer, open questions first; the newest hundred. Answered by `answerInPortal`. */
export const portalQuestionsView = (actor: Actor) =>
  answer(actor, "portal.read", async (tx) => {
    const rows = await tx.question.findMany({ orderBy: { askedAt: "desc" }, take: 100 });
    const answers = await tx.answer.findMany({ where: { questionId: { in: rows.map(({ id }) => id) } } });
    const releases = await tx.holdRelease.findMany({
      where: { holdId: { in: rows.flatMap(({ holdId }) => holdId ?? []) } },
      select: { holdId: true },
    });
    const orders = await tx.order.findMany({
      where: { id: { in: rows.map(({ orderId }) => orderId) } },
      select: { id: true, number: true },
    });
    const sensors = await tx.sensor.findMany({
      where: { id: { in: rows.flatMap(({ sensorId }) => sensorId ?? []) } },
      select: { id: true, serial: true },
    });
    const questions = rows.map((row) => {
      const given = answers.find(({ questionId }) => questionId === row.id) ?? null;
      const isSettled = releases.some(({ holdId }) => holdId === row.holdId);
      return {
        id: row.id,
        orderNumber: orders.find(({ id }) => id === row.orderId)?.number ?? "",
        serial: sensors.find(({ id }) => id === row.sensorId)?.serial ?? "",
        text: row.text,
        choices: readChoices(row.choices),
        askedAt: row.askedAt.toISOString(),
        isOpen: given === null && !isSettled,
        answer: given && {
          choice: given.choice,
          text: given.text,
          saidByName: given.saidByName,
          cameBy: given.cameBy as AnswerWay,
          saidAt: given.saidAt.toISOString(),
        },
      };
    });
    return {
      mayAnswer: actor.kind === "customer" && may(actor.roles, "portal.order"),
      questions: questions.toSorted((one, other) => Number(other.isOpen) - Number(one.isOpen)),
    };
  });
