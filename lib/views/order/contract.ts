import type { Tx } from "@/lib/data/in-scope";
import { loadChanges } from "@/lib/data/order/change-store";
import { loadDifferences } from "@/lib/data/order/difference-store";
import { loadOrder } from "@/lib/data/order/load-order";
import { loadOrderNotes } from "@/lib/data/order/note-store";
import { loadReviews } from "@/lib/data/order/review-store";
import { type NoteKind, noteKindLabels } from "@/lib/domain/order/note";
import { snapshotDifferences } from "@/lib/domain/order/order-snapshot";
import { type ReviewAnswers, reviewQuestions } from "@/lib/domain/order/review";
import type { Actor } from "@/lib/domain/staff/actor";
import { may, type Permission } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";

const answerWords = {
  yes: "Yes",
  none: "None is used",
  approved: "The customer was told, and approves",
} as const;

const answersOf = (answers: ReviewAnswers) =>
  reviewQuestions.map(({ key, clause, title }) => ({
    title,
    clause,
    answer: answerWords[answers[key].answer],
    remark: answers[key].remark,
  }));

const namesOf = async (tx: Tx, ids: readonly (string | null)[]): Promise<(id: string | null) => string> => {
  const people = await tx.person.findMany({
    where: { id: { in: ids.flatMap((id) => id ?? []) } },
    select: { id: true, name: true },
  });
  return (id) => people.find((person) => person.id === id)?.name ?? "";
};

/** What was reviewed, told, settled, changed and said about an order, each as it was written. */
export const orderContractView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const order = found(await loadOrder(tx, number));
    const reviews = await loadReviews(tx, order.id);
    const differences = await loadDifferences(tx, order.id);
    const changes = await loadChanges(tx, order.id);
    const notes = await loadOrderNotes(tx, order.id);
    const name = await namesOf(tx, [
      ...reviews.map(({ reviewedById }) => reviewedById),
      ...differences.flatMap(({ raisedById, settlement }) => [raisedById, settlement?.settledById ?? null]),
      ...changes.map(({ changedById }) => changedById),
      ...notes.map(({ saidById }) => saidById),
    ]);
    const has = (permission: Permission) => actor.kind === "system" || may(actor.roles, permission);
    const isLive = order.state !== "completed" && order.state !== "cancelled";
    return {
      number,
      reviews: reviews.map(({ sequence, occasion, answers, capability, reviewedById, reviewedAt }) => ({
        sequence,
        isChange: occasion === "change",
        who: name(reviewedById),
        at: reviewedAt.toISOString(),
        answers: answersOf(answers),
        told: answers.toldCustomer,
        capability,
      })),
      differences: differences.map(({ id, text, raisedById, raisedAt, settlement }) => ({
        id,
        text,
        who: name(raisedById),
        at: raisedAt.toISOString(),
        settlement: settlement && {
          text: settlement.text,
          agreedWith: settlement.agreedWith,
          who: name(settlement.settledById),
          at: settlement.settledAt.toISOString(),
        },
      })),
      changes: changes.map(({ sequence, reason, agreedWith, changedById, changedAt, before, after }) => ({
        sequence,
        reason,
        agreedWith,
        who: name(changedById),
        at: changedAt.toISOString(),
        differences: snapshotDifferences(before, after),
      })),
      notes: notes.map((note) => ({
        key: String(note.id),
        kind: noteKindLabels[note.kind as NoteKind],
        text: note.text,
        isForCustomer: note.isForCustomer,
        who: name(note.saidById) || note.saidByName,
        at: note.saidAt.toISOString(),
      })),
      mayDiffer: isLive && has("order.record"),
      mayNote: has("order.note"),
    };
  });

export type OrderContract = Awaited<ReturnType<typeof orderContractView>>;
