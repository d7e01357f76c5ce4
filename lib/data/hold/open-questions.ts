import type { Tx } from "../in-scope";

/** Of these holds those whose question the customer has not answered yet. */
export const openQuestionsOf = async (tx: Tx, holdIds: readonly string[]): Promise<ReadonlySet<string>> => {
  const asked = await tx.question.findMany({
    where: { holdId: { in: [...holdIds] } },
    select: { id: true, holdId: true },
  });
  const answers = await tx.answer.findMany({
    where: { questionId: { in: asked.map(({ id }) => id) } },
    select: { questionId: true },
  });
  const answered = new Set(answers.map(({ questionId }) => questionId));
  return new Set(asked.flatMap(({ id, holdId }) => (holdId === null || answered.has(id) ? [] : [holdId])));
};
