import type { OpenedInput } from "@/lib/domain/review/decide-opened";
import { resultKey } from "@/lib/domain/review/result-name";
import type { ReviewException } from "@/lib/domain/review/review-exception";
import type { Tx } from "../in-scope";
import { sha256 } from "../sha256";
import { inOrder } from "./in-order";
import { loadExceptions } from "./load-exceptions";
import type { ReviewRun } from "./load-review-run";
import { isReplacing } from "./review-summary";

/**
 * The seed drawn at submission. A run that was submitted before there was a lot has none: the evaluation's own id, of 122
 * random bits nobody chose, stands in.
 */
const seedOf = async (tx: Tx, evaluationId: string): Promise<Uint8Array> => {
  const sample = await tx.reviewSample.findUnique({ where: { evaluationId } });
  return sample?.seed ?? sha256(new TextEncoder().encode(evaluationId));
};

/** What this person has opened of the evaluation, and what `decideOpened` asks beside it. */
export const loadOpened = async (
  tx: Tx,
  review: ReviewRun,
  personId: string,
  exceptions?: readonly ReviewException[],
): Promise<OpenedInput> => {
  const { evaluation } = review;
  if (!evaluation) return { results: [], exceptions: [], seed: new Uint8Array(32), opened: [] };
  const openings = await tx.reviewOpening.findMany({
    where: { evaluationId: evaluation.id, openedById: personId },
    select: { sensorId: true, setpointId: true },
  });
  const opened = new Set(
    openings.map(({ sensorId, setpointId }) => resultKey({ sensor: sensorId, setpoint: setpointId })),
  );
  const results = inOrder(review);
  return {
    results: results.map(({ point }) => ({
      sensor: point.sensor,
      setpoint: point.setpoint,
      label: `${Number(point.nominalCelsius.toFixed(2))} °C`,
    })),
    exceptions: exceptions ?? (await loadExceptions(tx, review)),
    seed: await seedOf(tx, evaluation.id),
    anew: results
      .filter(({ sensorId }) => isReplacing(review, sensorId))
      .map(({ point: { sensor, setpoint } }) => ({ sensor, setpoint })),
    opened: results
      .filter(({ sensorId, setpointId }) => opened.has(resultKey({ sensor: sensorId, setpoint: setpointId })))
      .map(({ point: { sensor, setpoint } }) => ({ sensor, setpoint })),
  };
};
