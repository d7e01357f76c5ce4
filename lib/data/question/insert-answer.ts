import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { decideAnswer } from "@/lib/domain/question/decide-answer";
import { questionEvents } from "@/lib/domain/question/events";
import type { AnswerWay } from "@/lib/domain/question/labels";
import { demand } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";
import { refuseDuplicate } from "../refuse-duplicate";
import type { LoadedQuestion } from "./load-question";

type Said = {
  readonly choice: string;
  readonly text: string;
  readonly cameBy: AnswerWay;
  readonly saidByName: string;
  readonly saidById: string | null;
  readonly saidAt: Date;
};

/** Stores what the customer answered, once; answers the event. */
export const insertAnswer = async (tx: Tx, question: LoadedQuestion, said: Said): Promise<AuditEvent> => {
  const { insists } = demand(decideAnswer(question, said));
  const { id: questionId, customerId, orderNumber, tag } = question;
  const stored = tx.answer.create({ data: { ...said, questionId, customerId, insists } });
  await refuseDuplicate(stored, "choice", "Somebody answered a moment ago; the first answer stays.");
  const { choice, text, cameBy } = said;
  const payload = { orderNumber, tag, choice, text, insists, cameBy };
  return eventOf(questionEvents.answered, questionId, payload);
};
