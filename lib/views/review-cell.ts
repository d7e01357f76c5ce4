import type { Duty } from "@/lib/data/review/load-duty";
import type { ReviewRun } from "@/lib/data/review/load-review-run";
import { resultHref } from "@/lib/data/review/review-summary";
import type { EvaluatedPoint } from "@/lib/domain/evidence/evaluation";
import { dominantWord } from "@/lib/domain/review/dominant-word";
import { type PrintedDifference, printedDifference } from "@/lib/domain/review/printed-difference";
import { resultKey } from "@/lib/domain/review/result-name";

export type ReviewCell = {
  readonly href: string;
  readonly state: string;
  readonly errorCelsius: string;
  readonly expandedCelsius: string;
  readonly conformity: string;
  readonly isOutsideScope: boolean;
  /** The largest line of its budget, in a word with its share; empty where nothing was measured. */
  readonly dominant: string;
  readonly reason: string;
  /** To the last calibration; null: the first here. */
  readonly difference: PrintedDifference | null;
  /** Opened by whoever asks; else whether they must. */
  readonly opening: "opened" | "exception" | "lot" | null;
  /** Remarks nobody has settled. */
  readonly openRemarks: number;
};

type Result = NonNullable<ReviewRun["evaluation"]>["results"][number];

const openingOf = (duty: Duty, key: string): ReviewCell["opening"] => {
  if (duty.opened.has(key)) return "opened";
  if (!duty.must.has(key)) return null;
  return duty.drawn.has(key) ? "lot" : "exception";
};

const figures = (point: EvaluatedPoint, duty: Duty) => {
  if (point.state !== "measured")
    return {
      errorCelsius: "",
      expandedCelsius: "",
      conformity: "no-statement",
      isOutsideScope: false,
      dominant: "",
      reason: point.reason,
      difference: null,
    };
  const earlier = duty.earlier.get(resultKey(point));
  return {
    errorCelsius: point.printed.errorCelsius,
    expandedCelsius: point.printed.expandedCelsius,
    conformity: point.conformity.state,
    isOutsideScope: point.scope.state === "outside",
    dominant: dominantWord(point),
    reason: "",
    difference: earlier ? printedDifference(point, earlier) : null,
  };
};

/** One result as the matrix of a run shows it, for whoever asks. */
export const reviewCell = (review: ReviewRun, duty: Duty, result: Result): ReviewCell => ({
  href: resultHref(review, result.sensorId, result.setpointId),
  state: result.point.state,
  ...figures(result.point, duty),
  opening: openingOf(duty, resultKey(result.point)),
  openRemarks: duty.remarks.filter(
    (one) => !one.isSettled && one.sensorId === result.sensorId && one.setpointId === result.setpointId,
  ).length,
});
