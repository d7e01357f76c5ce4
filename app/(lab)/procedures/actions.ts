"use server";
import { changeDraft } from "@/lib/operations/procedure/change-draft";
import { draftRevision } from "@/lib/operations/procedure/draft-revision";
import { makeCurrent } from "@/lib/operations/procedure/make-current";
import { recordProcedure } from "@/lib/operations/procedure/record";
import { formAction } from "@/lib/web/form-action";
import { flag, number, parseDecimal, rows, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const record = formAction(recordProcedure, {
  parse: (data) => ({ key: text(data, "key"), title: text(data, "title"), copyOf: text(data, "copyOf") }),
  done: ({ key }) => ({ redirect: `/procedures/${key}/draft` }),
});
export const recordProcedureAction = async (state: FormState, data: FormData) => record(state, data);

const draft = formAction(draftRevision, {
  parse: (data) => ({ key: text(data, "key") }),
  done: ({ key }) => ({ redirect: `/procedures/${key}/draft` }),
});
export const draftRevisionAction = async (state: FormState, data: FormData) => draft(state, data);

const which = (data: FormData) => ({ id: text(data, "id"), version: number(data, "version") });
const stored = "The draft is stored.";

const words = formAction(changeDraft, {
  parse: (data) => ({
    ...which(data),
    change: text(data, "change"),
    verification: text(data, "verification"),
  }),
  done: () => stored,
});
export const describeDraftAction = async (state: FormState, data: FormData) => words(state, data);

const whole = formAction(changeDraft, {
  parse: (data) => ({ ...which(data), budgetText: text(data, "budgetText") }),
  done: () => stored,
});
export const changeBudgetAction = async (state: FormState, data: FormData) => whole(state, data);

const gate = formAction(changeDraft, {
  parse: (data) => ({ ...which(data), policyText: text(data, "policyText") }),
  done: () => stored,
});
export const changeGateAction = async (state: FormState, data: FormData) => gate(state, data);

const figureOrNone = (typed: string | undefined) => (typed ? parseDecimal(typed) : null);

const comparison = (data: FormData) => {
  const carryOrder = number(data, "figures.comparison.carryOrder");
  return text(data, "figures.comparison.zero") === "shorted-channel"
    ? { zero: "shorted-channel", channel: text(data, "figures.comparison.channel"), carryOrder }
    : { zero: "none", reason: text(data, "figures.comparison.reason"), carryOrder };
};

const figures = formAction(changeDraft, {
  parse: (data) => ({
    ...which(data),
    figures: {
      lines: rows(data, "figures.lines", ["place", "kind", "value", "unit", "source"]).map((row) => ({
        ...row,
        value: figureOrNone(row.value),
      })),
      correlations: rows(data, "figures.correlations", ["place", "coefficient", "reason"]).map((row) => ({
        ...row,
        coefficient: parseDecimal(row.coefficient ?? ""),
      })),
      coverage: text(data, "figures.coverage"),
      comparison: comparison(data),
      deviationFunction: {
        rule: text(data, "figures.deviationFunction.rule"),
        degree: figureOrNone(text(data, "figures.deviationFunction.degree")),
        limit: figureOrNone(text(data, "figures.deviationFunction.limit")),
        isThroughZero: flag(data, "figures.deviationFunction.isThroughZero"),
        method: text(data, "figures.deviationFunction.method"),
      },
    },
  }),
  done: () => stored,
});
export const changeFiguresAction = async (state: FormState, data: FormData) => figures(state, data);

const approve = formAction(makeCurrent, {
  parse: which,
  done: ({ key }) => ({ redirect: `/procedures/${key}` }),
});
export const makeCurrentAction = async (state: FormState, data: FormData) => approve(state, data);
