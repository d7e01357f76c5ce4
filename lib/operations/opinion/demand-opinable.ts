import { demandAuthorised } from "@/lib/data/authorisation/demand-authorised";
import { loadBundle } from "@/lib/data/certificate/load-bundle";
import type { Tx } from "@/lib/data/in-scope";
import { loadReviewRun } from "@/lib/data/review/load-review-run";
import { isReplacing } from "@/lib/data/review/review-summary";
import { lockRun } from "@/lib/data/sql/lock-run";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideReviewable } from "@/lib/domain/review/decide-reviewable";

type Place = { readonly runId: string; readonly evaluationId: string; readonly sensorId: string };

/** The sensor of a run under review, not certified from it yet, and by which authorisation this person may interpret it. */
export const demandOpinable = async (tx: Tx, place: Place, personId: string, now: Date) => {
  const locked = await lockRun(tx, place.runId);
  const review = locked ? await loadReviewRun(tx, place.runId) : null;
  const sensor = review?.sensors.find(({ id }) => id === place.sensorId);
  if (!review?.evaluation || !sensor)
    throw new Refused({ code: "not-found", message: "This sensor is not in this run." });
  demand(
    decideReviewable({
      isReplacing: isReplacing(review, sensor.id),
      runState: review.run.state,
      evaluationId: review.evaluation.id,
      seenEvaluationId: place.evaluationId,
    }),
  );
  const signed = review.certificates.find(({ sensorId }) => sensorId === sensor.id);
  if (signed && !isReplacing(review, sensor.id))
    throw new Refused({
      code: "wrong-state",
      message: `${sensor.tag} has its certificate already: ${signed.number}. An opinion is written before the sign-off. It can still follow with a replacement: ask for one at the certificate, evaluate the run again, and write it there.`,
    });
  const bundle = demand(await loadBundle(tx, review, [sensor.id]));
  const authorisation = await demandAuthorised(tx, personId, bundle, now, "opinion");
  return { review, sensor, authorisation, standing: review.opinions.get(sensor.id) ?? null };
};
