import type { ReviewRun } from "./load-review-run";

type Evaluation = NonNullable<ReviewRun["evaluation"]>;

/** Sensors by tag, each through its setpoints: the order of the matrix. */
export const inOrder = (review: ReviewRun): Evaluation["results"] => {
  const sensorAt = new Map(review.sensors.map(({ id }, index) => [id, index]));
  const positionOf = new Map(review.run.setpoints.map(({ id, position }) => [id, position]));
  return [...(review.evaluation?.results ?? [])].sort(
    (left, right) =>
      (sensorAt.get(left.sensorId) ?? 0) - (sensorAt.get(right.sensorId) ?? 0) ||
      (positionOf.get(left.setpointId) ?? 0) - (positionOf.get(right.setpointId) ?? 0),
  );
};
