import { z } from "zod";
import { lines, requiredLine, requiredLines } from "../typed-text";

/** Where people reach this laboratory: links in messages begin with it. */
export const PublicUrl = z.url({ protocol: /^https?$/ });

export const QuestionText = requiredLines("Write what you ask the customer.", 2000);

/** One answer a line, as they are offered; none: the customer answers in their own words. */
export const Choices = z
  .array(requiredLine("Write the answer that is offered.", 120))
  .max(6, "At most six answers.")
  .refine((all) => new Set(all).size === all.length, "Two answers are the same.");

export const AnswerFields = {
  choice: z.string().trim().max(120).default(""),
  text: lines(2000).default(""),
};

export const SaidBy = requiredLine("Write the name of whoever answers.", 120);
