import { ok, type Result, refuse } from "../refusal";
import { insistChoice } from "./labels";
import { SaidBy } from "./schema";

export type AskedQuestion = {
  readonly choices: readonly string[];
  readonly isAnswered: boolean;
  /** Its hold has ended: whatever is answered now changes nothing. */
  readonly isSettled: boolean;
};

/** What was answered, and whether the customer insists on measuring what deviates. */
export const decideAnswer = (
  question: AskedQuestion,
  said: { readonly choice: string; readonly text: string },
): Result<{ readonly insists: boolean }> => {
  if (question.isAnswered)
    return refuse(
      "wrong-state",
      "This question was answered already. The first answer stays; write to the laboratory to change it.",
    );
  if (question.isSettled)
    return refuse(
      "wrong-state",
      "The laboratory has settled this already; the answer was not stored. Please write to it.",
    );
  if (said.choice !== "" && !question.choices.includes(said.choice))
    return refuse("invalid", "This answer was not offered. Nothing was stored.", {
      choice: "Choose one of the answers offered.",
    });
  if (said.choice === "" && question.choices.length > 0)
    return refuse("invalid", "One answer is missing. Nothing was stored.", {
      choice: "Choose one of the answers.",
    });
  if (said.choice === "" && said.text === "")
    return refuse("invalid", "The answer is empty. Nothing was stored.", { text: "Write your answer." });
  return ok({ insists: said.choice === insistChoice });
};

/** The same by the link of a mail, where nobody is signed in: the name too, and all that is missing told at once. */
export const decideLinkedAnswer = (
  question: AskedQuestion,
  said: { readonly choice: string; readonly text: string; readonly saidByName: string },
): Result<{ readonly saidByName: string }> => {
  const answer = decideAnswer(question, said);
  if (!answer.ok && answer.refusal.code !== "invalid") return answer;
  const name = SaidBy.safeParse(said.saidByName);
  if (name.success) return answer.ok ? ok({ saidByName: name.data }) : answer;
  const saidByName = name.error.issues[0]?.message ?? "Write your name.";
  return refuse("invalid", answer.ok ? "The name is missing. Nothing was stored." : answer.refusal.message, {
    ...(answer.ok ? {} : answer.refusal.fields),
    saidByName,
  });
};
