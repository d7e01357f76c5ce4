import type { InDoubt } from "@/lib/domain/review/decide-not-in-doubt";
import type { ReviewedResult } from "@/lib/domain/review/difference-cell";
import { reviewExceptions } from "@/lib/domain/review/exceptions";
import type { ReviewException } from "@/lib/domain/review/review-exception";
import { readAssessment } from "@/lib/domain/run/reference-summary";
import type { WindowAssessment } from "@/lib/metrology/stability/stability-types";
import { inOrder } from "./in-order";
import type { ReviewRun } from "./load-review-run";

/** By the tags and names that the gate uses. */
const placesOf = ({ run, standards, sensors }: ReviewRun) => {
  const tags = new Map([...standards, ...sensors].map(({ id, tag }) => [id, tag]));
  return run.places.map(({ kind, place, channel, sensorId, equipmentId, junctionId }) => ({
    ...{ kind, place, channel, junction: tags.get(junctionId) ?? "" },
    tag: tags.get(sensorId ?? equipmentId ?? "") ?? null,
  }));
};

/** By the windows that were accepted, as they were judged then. */
const agreementsOf = ({ run, windows }: ReviewRun) =>
  windows.flatMap(({ setpointId, assessment }) => {
    const setpoint = run.setpoints.find(({ id }) => id === setpointId);
    const { criterion }: Partial<WindowAssessment> = readAssessment(assessment);
    return setpoint && criterion
      ? [{ celsius: setpoint.celsius, limitCelsius: criterion.agreementCelsius }]
      : [];
  });

/** What stands out in a loaded run, the gravest first. */
export const exceptionsOf = (
  review: ReviewRun,
  reviewed: readonly ReviewedResult[],
  inDoubt: readonly InDoubt[],
): readonly ReviewException[] =>
  reviewExceptions({
    reviewed,
    inDoubt,
    points: inOrder(review).map(({ point }) => point),
    findings: review.evaluation?.findings ?? [],
    hasTypedReadings: review.blocks.some(({ source }) => source === "typed"),
    setAside: review.gateRows,
    roomAgain: review.roomAgain.map((one) => ({ ...one, href: `/runs/${review.run.number}` })),
    places: placesOf(review),
    ...(review.evaluation ? { findingPlaces: review.evaluation.head } : {}),
    agreements: agreementsOf(review),
    movedWindowsCelsius: review.windows
      .filter(({ origin }) => origin === "moved")
      .flatMap(
        ({ setpointId }) =>
          review.run.setpoints.find((setpoint) => setpoint.id === setpointId)?.celsius ?? [],
      ),
  });

/** Signed for, and asked again: its certificate is to be replaced by what this run says now. */
export const isReplacing = ({ replacing }: ReviewRun, id: string): boolean =>
  replacing.some(({ sensorId }) => sensorId === id);

/** Tags of the sensors that are signed for, and stay so. */
export const signedTags = (review: ReviewRun): ReadonlySet<string> =>
  new Set(
    review.sensors
      .filter(
        ({ id }) => !isReplacing(review, id) && review.certificates.some(({ sensorId }) => sensorId === id),
      )
      .map(({ tag }) => tag),
  );

/** Without what speaks only of sensors that are signed for already: those are settled. */
export const stillOpen = (
  review: ReviewRun,
  exceptions: readonly ReviewException[],
): readonly ReviewException[] => {
  const signed = signedTags(review);
  return exceptions.filter(
    ({ point, others = [] }) => !point || [point, ...others].some(({ sensor }) => !signed.has(sensor)),
  );
};

/** The last submission: when it came and from whom. */
export const submissionOf = (review: ReviewRun) => {
  const submitted = review.decisions.findLast(({ decision }) => decision === "submitted");
  return submitted
    ? {
        at: submitted.decidedAt.toISOString(),
        by: review.names.get(submitted.decidedById) ?? "",
        note: submitted.reason,
      }
    : null;
};

/** The page of a result: the run, the sensor's tag, the setpoint's position. */
export const resultHref = (review: ReviewRun, sensorId: string, setpointId: string): string => {
  const tag = review.sensors.find(({ id }) => id === sensorId)?.tag ?? "";
  const position = review.run.setpoints.find(({ id }) => id === setpointId)?.position ?? 0;
  return `/review/${review.run.number}/${tag}/${position}`;
};
