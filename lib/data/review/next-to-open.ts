import { type ResultName, resultKey } from "@/lib/domain/review/result-name";
import type { Duty } from "./load-duty";
import type { ReviewRun } from "./load-review-run";
import { resultHref } from "./review-summary";

/** The next result that must be opened and is not, after this one and then from the beginning; null: none is left. */
export const nextToOpen = (
  review: ReviewRun,
  { mustOpen, unopened }: Pick<Duty, "mustOpen" | "unopened">,
  after: ResultName | null,
): string | null => {
  const order = new Map(review.evaluation?.results.map(({ point, ...ids }) => [resultKey(point), ids]));
  const left = unopened.filter((one) => !after || resultKey(one) !== resultKey(after));
  const position = new Map(mustOpen.map((one, index) => [resultKey(one), index]));
  const here = after ? (position.get(resultKey(after)) ?? -1) : -1;
  const next = left.find((one) => (position.get(resultKey(one)) ?? 0) > here) ?? left[0];
  const ids = next && order.get(resultKey(next));
  return ids ? resultHref(review, ids.sensorId, ids.setpointId) : null;
};
