import { disposeChoice, insistChoice, isNotMeasuredChoice } from "../question/labels";
import type { HoldOutcome } from "./labels";

/** What the customer chose of the answers offered, and what they wrote; each may be empty. */
type Answered = { readonly choice: string; readonly text: string };

const backWords = /^(please )?(return|(send|give|ship|bring) (it|them) back)\b/i;
const disposalWords = /^(please )?(dispose|scrap|discard)\b/i;

/** The answer offered is often one written for this question: its first words are read, no more. */
const saidOf = ({ choice, text }: Answered): string => (choice === "" ? text : choice).trim();

/** They asked that it is done away with, in the words offered for that or in their own. */
export const isDisposalAsked = (answer: Answered | undefined): boolean =>
  answer !== undefined && (answer.choice === disposeChoice || disposalWords.test(saidOf(answer)));

/**
 * What the form that ends a hold begins with. Without an answer the first way; after one what it says; after one that
 * cannot be told from its first words nothing (null), so that nobody goes on against what the customer wrote.
 */
export const proposeOutcome = (
  outcomes: readonly HoldOutcome[],
  answer: Answered | undefined,
): HoldOutcome | null => {
  const first = outcomes[0] ?? null;
  if (answer === undefined || answer.choice === insistChoice || outcomes.length === 1) return first;
  const goesBack =
    isNotMeasuredChoice(answer.choice) || isDisposalAsked(answer) || backWords.test(saidOf(answer));
  return goesBack ? "return-unmeasured" : null;
};
