import type { z } from "zod";
import { canonical } from "../audit/canonical";
import { GateDifferences } from "../gate/differences";
import { ok, type Result, refuse } from "../refusal";
import { BudgetInputs, readBudgetInputs } from "../run/budget-inputs";
import { changedFigures } from "./figures";
import { readDraftText } from "./read-draft-text";
import type { ChangeDraftInput } from "./schema";
import { type ProcedureRevision, revisionName } from "./types";

type Draft = Pick<ProcedureRevision, "budgetInputs" | "gatePolicy" | "change" | "verification">;

const budgetOf = (before: ProcedureRevision, input: z.output<typeof ChangeDraftInput>): Result<string> => {
  // Name and revision are the record's, whatever the text says.
  const named = (budget: BudgetInputs) => canonical({ ...budget, procedure: revisionName(before) });
  if (input.budgetText !== undefined) {
    const read = readDraftText(BudgetInputs, input.budgetText, "budgetText");
    return read.ok ? ok(named(read.value.value)) : read;
  }
  if (input.figures !== undefined) {
    const changed = changedFigures(readBudgetInputs(before.budgetInputs), input.figures);
    return changed.ok ? ok(named(changed.value)) : changed;
  }
  return ok(before.budgetInputs);
};

/** The draft with what was typed, and the names of what differs. Nothing that differs is refused: it is no change. */
export const changedDraft = (
  before: ProcedureRevision,
  input: z.output<typeof ChangeDraftInput>,
): Result<{ readonly draft: Draft; readonly changed: readonly string[] }> => {
  const budget = budgetOf(before, input);
  if (!budget.ok) return budget;
  const policy =
    input.policyText === undefined
      ? ok({ text: before.gatePolicy })
      : readDraftText(GateDifferences, input.policyText, "policyText");
  if (!policy.ok) return policy;
  const draft: Draft = {
    budgetInputs: budget.value,
    gatePolicy: policy.value.text,
    change: input.change ?? before.change,
    verification: input.verification ?? before.verification,
  };
  const names = {
    budgetInputs: "budget",
    gatePolicy: "gate",
    change: "change",
    verification: "verification",
  };
  const changed = (Object.keys(names) as (keyof Draft)[]).filter((key) => draft[key] !== before[key]);
  if (changed.length === 0) return refuse("rule", "Nothing differs from what is stored.");
  return ok({ draft, changed: changed.map((key) => names[key]) });
};
