import { z } from "zod";
import { defineEvent } from "../audit/define-event";
import { subjectWords } from "../hold/events";
import { answerWays } from "./labels";

const subject = { orderNumber: z.string().min(1), tag: z.string() };

/** Facts about this noun that the audit log can hold; gathered in `domain/audit/events`. */
export const questionEvents = {
  asked: defineEvent({
    action: "question.asked",
    entityKind: "question",
    payload: z.strictObject({ ...subject, text: z.string().min(1), choices: z.array(z.string()) }),
    sentence: (p) =>
      `asked the customer about ${subjectWords(p)}: ${p.text}${
        p.choices.length === 0 ? "" : ` (${p.choices.join(" / ")})`
      }`,
  }),
  answered: defineEvent({
    action: "question.answered",
    entityKind: "question",
    payload: z.strictObject({
      ...subject,
      choice: z.string(),
      text: z.string(),
      insists: z.boolean(),
      cameBy: z.enum(answerWays),
    }),
    sentence: (p) =>
      `recorded the customer's answer about ${subjectWords(p)}, by ${p.cameBy}: ${[p.choice, p.text]
        .filter((one) => one !== "")
        .join("; ")}`,
  }),
} as const;
