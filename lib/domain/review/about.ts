import type { ResultName } from "./result-name";
import type { ReviewException } from "./review-exception";

/** The results an exception is about: each of them is opened before its sensor is signed for. */
export const about = (results: readonly ResultName[]): Pick<ReviewException, "point" | "others"> => {
  const [point, ...others] = results.map(({ sensor, setpoint }) => ({ sensor, setpoint }));
  return point ? { point, ...(others.length > 0 ? { others } : {}) } : {};
};
