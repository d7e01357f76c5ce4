import { randomBytes } from "node:crypto";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { reviewEvents } from "@/lib/domain/review/events";
import { hex } from "../hex";
import type { Tx } from "../in-scope";

type Numbered = { readonly id: string; readonly number: string };
type Evaluated = { readonly id: string; readonly sequence: number };

/**
 * Draws the lot of an evaluation, once: handed over again after a return, it keeps its lot, so that nobody draws until it
 * suits. Gives the event that keeps the seed; none where there was a lot.
 */
export const drawSample = async (
  tx: Tx,
  run: Numbered,
  evaluation: Evaluated,
  now: Date,
): Promise<readonly AuditEvent[]> => {
  const evaluationId = evaluation.id;
  const earlier = await tx.reviewSample.findUnique({
    where: { evaluationId },
    select: { evaluationId: true },
  });
  if (earlier) return [];
  const seed = Uint8Array.from(randomBytes(32));
  await tx.reviewSample.create({ data: { runId: run.id, evaluationId, seed, drawnAt: now } });
  return [
    eventOf(reviewEvents.sampleDrawn, run.id, {
      ...{ run: run.number, evaluation: evaluation.sequence, seed: hex(seed) },
    }),
  ];
};
