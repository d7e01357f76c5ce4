import { inSnapshot } from "@/lib/data/in-scope";
import { loadLinkedQuestion } from "@/lib/data/question/load-question";

/**
 * The question a link opens: whoever asks has no actor, and learns only what their own link is about. Null: it opens
 * nothing any more.
 */
export const linkedQuestionView = (token: string, now: Date) =>
  inSnapshot({ kind: "laboratory" }, async (tx) => {
    const question = await loadLinkedQuestion(tx, token, now);
    if (!question) return null;
    const laboratory = await tx.laboratory.findFirst({ select: { name: true } });
    const { orderNumber, serial, text, choices, isAnswered, isSettled } = question;
    return {
      laboratory: laboratory?.name ?? "the laboratory",
      orderNumber,
      /** The customer's own name of the sensor; empty where it is about the whole order. */
      serial,
      text,
      choices,
      isOpen: !isAnswered && !isSettled,
    };
  });
