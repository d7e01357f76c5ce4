import { canonical } from "../audit/canonical";
import { readBudgetInputs } from "../run/budget-inputs";

/** The same inputs under another name and revision, which every run keeps with them. */
export const renamedBudget = (text: string, procedure: string): string =>
  canonical({ ...readBudgetInputs(text), procedure });
