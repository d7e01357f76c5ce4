import type { InDoubt } from "@/lib/domain/review/decide-not-in-doubt";
import type { ReviewedResult } from "@/lib/domain/review/difference-cell";
import type { EarlierResult } from "@/lib/domain/review/earlier-result";
import { resultKey } from "@/lib/domain/review/result-name";
import type { ReviewException } from "@/lib/domain/review/review-exception";
import { loadInDoubt } from "../equipment/in-doubt";
import type { Tx } from "../in-scope";
import { inOrder } from "./in-order";
import { loadEarlier } from "./load-earlier";
import type { ReviewRun } from "./load-review-run";
import { exceptionsOf } from "./review-summary";

/** The junctions of one block share its thermometer, and drift as one. */
const junctionsOf = (review: ReviewRun): ReadonlyMap<string, string> =>
  new Map(
    review.run.places.flatMap(({ sensorId, junctionId }): readonly (readonly [string, string])[] => {
      const tag = review.standards.find(({ id }) => id === junctionId)?.tag ?? junctionId;
      const block = review.evaluation?.head.junctions.find(({ id }) => id === tag)?.block;
      return sensorId ? [[sensorId, block ?? tag]] : [];
    }),
  );

/** Each measured result beside the sensor's last one. */
const besideEarlier = (review: ReviewRun, earlier: readonly EarlierResult[]): readonly ReviewedResult[] => {
  const last = new Map(earlier.map((one) => [resultKey(one), one]));
  const junctions = junctionsOf(review);
  return inOrder(review).flatMap(({ sensorId, point }) =>
    point.state === "measured"
      ? [{ point, earlier: last.get(resultKey(point)) ?? null, junction: junctions.get(sensorId) ?? "" }]
      : [],
  );
};

/** Of a run that is signed off, only while a certificate of it is to be replaced. */
export const loadDoubts = async (tx: Tx, { run, replacing }: ReviewRun): Promise<readonly InDoubt[]> =>
  run.state === "signed-off" && replacing.length === 0 ? [] : await loadInDoubt(tx, run);

/** What stands out in the whole evaluation, also of sensors that are signed for already: what must be opened rests on it. */
export const loadExceptions = async (
  tx: Tx,
  review: ReviewRun,
  earlier?: readonly EarlierResult[],
): Promise<readonly ReviewException[]> =>
  exceptionsOf(
    review,
    besideEarlier(review, earlier ?? (await loadEarlier(tx, review))),
    await loadDoubts(tx, review),
  );
