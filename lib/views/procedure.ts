import type { Tx } from "@/lib/data/in-scope";
import { loadRevisions } from "@/lib/data/procedure/procedure-store";
import { loadPeopleNames } from "@/lib/data/review/load-people-names";
import { budgetLines } from "@/lib/domain/procedure/budget-lines";
import { lineText } from "@/lib/domain/procedure/line-text";
import { typedFigures } from "@/lib/domain/procedure/typed-figures";
import { type ProcedureRevision, revisionName } from "@/lib/domain/procedure/types";
import { type BudgetInputs, readBudgetInputs } from "@/lib/domain/run/budget-inputs";
import { type Actor, actorIdOf } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

const pretty = (text: string): string => JSON.stringify(JSON.parse(text), undefined, 2);

const namesOf = (tx: Tx, revisions: readonly ProcedureRevision[]) =>
  loadPeopleNames(
    tx,
    revisions
      .flatMap(({ recordedById, currentById }) => [recordedById, currentById])
      .flatMap((id) => id ?? []),
  );

/** The figures of a revision in words, for who only reads. */
const figuresOf = (budget: BudgetInputs) =>
  budgetLines(budget).map(({ place, label, line }) => ({ place, label, ...lineText(line) }));

const contentOf = (revision: ProcedureRevision) => {
  const budget = readBudgetInputs(revision.budgetInputs);
  return {
    id: revision.id,
    version: revision.version,
    name: revisionName(revision),
    revision: revision.revision,
    change: revision.change,
    verification: revision.verification,
    lines: figuresOf(budget),
    figures: typedFigures(budget),
    labels: budgetLines(budget).map(({ label }) => label),
    budgetText: pretty(revision.budgetInputs),
    policyText: pretty(revision.gatePolicy),
  };
};

/** One procedure: its revisions, what the current one says, and the draft for who may write or approve it. */
export const procedureView = (actor: Actor, key: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const revisions = await loadRevisions(tx, key);
    const newest = found(revisions[0]);
    const names = await namesOf(tx, revisions);
    const nameOf = (id: string | null) => (id === null ? "came with the platform" : (names.get(id) ?? ""));
    const current = revisions.find(({ state }) => state === "current");
    const draft = revisions.find(({ state }) => state === "draft");
    const can = (permission: "procedure.draft" | "procedure.approve") =>
      actor.kind === "staff" && may(actor.roles, permission);
    return {
      key,
      title: newest.title,
      mayDraft: can("procedure.draft"),
      mayApprove: can("procedure.approve"),
      /** Who drafted it cannot approve it. */
      isOwnDraft: draft !== undefined && draft.recordedById === actorIdOf(actor),
      revisions: revisions.map((one) => ({
        id: one.id,
        revision: one.revision,
        state: one.state,
        change: one.change,
        verification: one.verification,
        draftedBy: nameOf(one.recordedById),
        draftedAt: one.recordedAt,
        currentBy: one.currentFrom === null ? "" : nameOf(one.currentById),
        currentFrom: one.currentFrom,
        withdrawnAt: one.withdrawnAt,
      })),
      current: current ? contentOf(current) : null,
      draft: draft ? { ...contentOf(draft), draftedBy: nameOf(draft.recordedById) } : null,
    };
  });

export type ProcedureView = Awaited<ReturnType<typeof procedureView>>;
