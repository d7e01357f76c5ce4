import type { Tx } from "../in-scope";

/** What was asked of the customer about one order and what they answered, the earlier first. */
export const loadAnsweredQuestions = async (tx: Tx, orderId: string) => {
  const questions = await tx.question.findMany({ where: { orderId } });
  const answers = await tx.answer.findMany({
    where: { questionId: { in: questions.map(({ id }) => id) } },
    orderBy: [{ saidAt: "asc" }, { id: "asc" }],
  });
  const sensors = await tx.sensor.findMany({
    where: { id: { in: questions.flatMap(({ sensorId }) => sensorId ?? []) } },
    select: { id: true, serial: true },
  });
  return answers.flatMap(({ choice, questionId, saidAt, saidByName, text }) => {
    const question = questions.find(({ id }) => id === questionId);
    if (!question) return [];
    const serial = sensors.find(({ id }) => id === question.sensorId)?.serial ?? "";
    return [{ question: question.text, serial, choice, text, saidByName, at: saidAt.toISOString() }];
  });
};
