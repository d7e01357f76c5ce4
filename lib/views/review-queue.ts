import { askedAmendments } from "@/lib/data/amendment/asked-amendments";
import type { Tx } from "@/lib/data/in-scope";
import { loadExceptions } from "@/lib/data/review/load-exceptions";
import { loadRemarks } from "@/lib/data/review/load-remarks";
import { loadReviewRun, type ReviewRun } from "@/lib/data/review/load-review-run";
import { stillOpen, submissionOf } from "@/lib/data/review/review-summary";
import { owedSecondLooks } from "@/lib/data/sql/owed-second-looks";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

export type QueueEntry = {
  readonly number: string;
  readonly submittedAt: string;
  readonly submittedBy: string;
  readonly customers: readonly string[];
  readonly sensors: number;
  readonly signedOff: number;
  readonly results: number;
  readonly exceptions: number;
  /** Remarks nobody has settled. */
  readonly openRemarks: number;
  /** The gravest, as a sentence; empty where nothing stands out. */
  readonly gravest: string;
  readonly weight: number;
};

const entryOf = async (tx: Tx, review: ReviewRun): Promise<QueueEntry> => {
  const exceptions = stillOpen(review, await loadExceptions(tx, review));
  const submission = submissionOf(review);
  const [gravest] = exceptions;
  return {
    number: review.run.number,
    submittedAt: submission?.at ?? review.run.createdAt.toISOString(),
    submittedBy: submission?.by ?? review.names.get(review.run.performerId) ?? "",
    customers: [...new Set(review.sensors.map(({ line }) => line.order.customer.name))],
    sensors: review.sensors.length,
    signedOff: review.certificates.length,
    results: review.evaluation?.results.length ?? 0,
    exceptions: exceptions.length,
    openRemarks: (await loadRemarks(tx, review)).filter(({ isSettled }) => !isSettled).length,
    gravest: gravest ? `${gravest.subject}: ${gravest.text}` : "",
    weight: gravest?.weight ?? 0,
  };
};

/** As many as a person looks through; the longest owed come first. */
const looksShown = 100;

/** Sign-offs by the performer whose second look nobody has taken yet. */
const looksOwed = async (tx: Tx) =>
  (await owedSecondLooks(tx, looksShown)).map(({ number, signedAt, reason }) => ({
    number,
    signedAt: signedAt.toISOString(),
    reason,
  }));

const returnedRuns = async (tx: Tx) => {
  const runs = await tx.run.findMany({ where: { state: "returned" }, select: { id: true, number: true } });
  const decisions = await tx.reviewDecision.findMany({
    where: { runId: { in: runs.map(({ id }) => id) }, decision: "returned" },
    orderBy: { id: "asc" },
  });
  return runs.map(({ id, number }) => {
    const last = decisions.findLast(({ runId }) => runId === id);
    return { number, reason: last?.reason ?? "", at: last?.decidedAt.toISOString() ?? "" };
  });
};

/** What waits for a signatory: exceptions first, then the longest waiting. */
export const reviewQueueView = (actor: Actor) =>
  answer(actor, "review.read", async (tx) => {
    const runs = await tx.run.findMany({ where: { state: "submitted" }, select: { id: true } });
    const entries: QueueEntry[] = [];
    for (const { id } of runs) {
      const review = await loadReviewRun(tx, id);
      if (review) entries.push(await entryOf(tx, review));
    }
    entries.sort(
      (left, right) => right.weight - left.weight || (left.submittedAt < right.submittedAt ? -1 : 1),
    );
    const { asked } = await askedAmendments(tx, looksShown);
    return {
      waiting: entries,
      returned: await returnedRuns(tx),
      secondLooks: await looksOwed(tx),
      asked: asked.map(({ askedAt, ...one }) => ({ ...one, askedAt: askedAt.toISOString() })),
    };
  });
