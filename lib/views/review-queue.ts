import type { Tx } from "@/lib/data/in-scope";
import { loadReviewRun, type ReviewRun } from "@/lib/data/review/load-review-run";
import { exceptionsOf, submissionOf } from "@/lib/data/review/review-summary";
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
  /** The gravest, as a sentence; empty where nothing stands out. */
  readonly gravest: string;
  readonly weight: number;
};

const entryOf = (review: ReviewRun): QueueEntry => {
  const exceptions = exceptionsOf(review);
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
    gravest: gravest ? `${gravest.subject}: ${gravest.text}` : "",
    weight: gravest?.weight ?? 0,
  };
};

/** Sign-offs by the performer whose second look nobody has taken yet. */
const owedSecondLooks = async (tx: Tx) => {
  const signed = await tx.reviewDecision.findMany({
    where: { decision: "signed-off", exceptionReason: { not: null } },
    orderBy: { id: "asc" },
  });
  const looked = await tx.reviewDecision.findMany({ where: { decision: "second-look" } });
  const done = new Set(looked.map(({ runId, sensorId }) => `${runId} ${sensorId}`));
  const owed = signed.filter(({ runId, sensorId }) => !done.has(`${runId} ${sensorId}`));
  const certificates = await tx.certificate.findMany({
    where: { OR: owed.map(({ runId, sensorId }) => ({ runId, sensorId: sensorId ?? undefined })) },
    select: { number: true, runId: true, sensorId: true, signedAt: true },
  });
  return owed.flatMap(({ runId, sensorId, exceptionReason }) => {
    const certificate = certificates.find((one) => one.runId === runId && one.sensorId === sensorId);
    return certificate
      ? [
          {
            number: certificate.number,
            signedAt: certificate.signedAt.toISOString(),
            reason: exceptionReason ?? "",
          },
        ]
      : [];
  });
};

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
      if (review) entries.push(entryOf(review));
    }
    entries.sort(
      (left, right) => right.weight - left.weight || (left.submittedAt < right.submittedAt ? -1 : 1),
    );
    return { waiting: entries, returned: await returnedRuns(tx), secondLooks: await owedSecondLooks(tx) };
  });
