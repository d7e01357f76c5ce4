import { roundHalfEven } from "../number/decimal";
import { lineAt, linearFit } from "../number/linear-fit";
import { mean } from "../number/mean";
import { found, type Outcome, refused } from "../outcome";
import { firstAfter, firstAtOrAfter } from "./bounds";
import {
  LEAST_READINGS,
  type ReferenceInWindow,
  type ReferenceSeries,
  type StabilityCriterion,
  type WindowAssessment,
} from "./stability-types";

const SECONDS_PER_MINUTE = 60;

/**
 * The numbers of a stability window, the same for a proposed one and for one a person has moved: both
 * ends belong to it. A problem only where there is nothing to compute from; a window that fails the
 * criterion is assessed, with its reasons.
 */
export function assessWindow(
  references: readonly ReferenceSeries[],
  fromSeconds: number,
  toSeconds: number,
  criterion: StabilityCriterion,
): Outcome<WindowAssessment> {
  if (references.length === 0) return refused("too-few", "no reference to judge the window by");
  if (!(toSeconds > fromSeconds)) return refused("outside-range", "the window ends before it begins");
  const middle = (fromSeconds + toSeconds) / 2;
  const inWindow: ReferenceInWindow[] = [];
  for (const reference of references) {
    const one = assessReference(reference, fromSeconds, toSeconds, middle);
    if (!one.ok) return one;
    inWindow.push(one.value);
  }
  const temperatures = inWindow.map(({ celsius }) => celsius);
  const slope = mean(inWindow.map(({ slopeCelsiusPerMinute }) => slopeCelsiusPerMinute));
  const lengthSeconds = toSeconds - fromSeconds;
  const numbers = {
    fromSeconds,
    toSeconds,
    lengthSeconds,
    meanCelsius: mean(temperatures),
    slopeCelsiusPerMinute: slope,
    slopeTimesLengthCelsius: (Math.abs(slope) * lengthSeconds) / SECONDS_PER_MINUTE,
    spreadCelsius: Math.max(...inWindow.map(({ spreadCelsius }) => spreadCelsius)),
    differenceCelsius: inWindow.length > 1 ? Math.max(...temperatures) - Math.min(...temperatures) : null,
    references: inWindow,
    criterion,
  };
  const reasons = reasonsAgainst(numbers);
  return found({ ...numbers, meets: reasons.length === 0, reasons });
}

function assessReference(
  reference: ReferenceSeries,
  fromSeconds: number,
  toSeconds: number,
  middle: number,
): Outcome<ReferenceInWindow> {
  const from = firstAtOrAfter(reference.seconds, fromSeconds);
  const to = firstAfter(reference.seconds, toSeconds);
  const seconds = Array.prototype.slice.call(reference.seconds, from, to) as number[];
  const celsius = Array.prototype.slice.call(reference.celsius, from, to) as number[];
  const fit = linearFit(seconds, celsius);
  if (!fit.ok) {
    return refused("too-few", `reference ${reference.id} has ${seconds.length} readings in the window`);
  }
  const value = lineAt(fit.value, middle);
  if (!Number.isFinite(value)) {
    return refused(
      "not-finite",
      `reference ${reference.id} has a reading in the window that is not a number`,
    );
  }
  return found({
    id: reference.id,
    readings: seconds.length,
    celsius: value,
    slopeCelsiusPerMinute: fit.value.slope * SECONDS_PER_MINUTE,
    spreadCelsius: largest(celsius) - smallest(celsius),
  });
}

// A loop, since a spread of tens of thousands of arguments would overflow the stack.
function largest(values: readonly number[]): number {
  return values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
}

function smallest(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
}

function reasonsAgainst(numbers: Omit<WindowAssessment, "meets" | "reasons">): string[] {
  const { criterion } = numbers;
  const reasons: string[] = [];
  if (numbers.lengthSeconds < criterion.minimumSeconds) {
    reasons.push(
      `The window is ${minutes(numbers.lengthSeconds)} min long; at least ${minutes(criterion.minimumSeconds)} min are asked for.`,
    );
  }
  for (const reference of numbers.references) {
    if (reference.readings < LEAST_READINGS) {
      reasons.push(`Reference ${reference.id} has only ${reference.readings} readings in the window.`);
    }
  }
  if (numbers.slopeTimesLengthCelsius > criterion.slopeTimesLengthCelsius) {
    reasons.push(
      `The references drift by ${celsius(numbers.slopeTimesLengthCelsius)} °C over the window; at most ${criterion.slopeTimesLengthCelsius} °C is allowed.`,
    );
  }
  if (numbers.differenceCelsius !== null && numbers.differenceCelsius > criterion.agreementCelsius) {
    reasons.push(
      `The references differ by ${celsius(numbers.differenceCelsius)} °C; U of their difference is ${celsius(criterion.agreementCelsius)} °C.`,
    );
  }
  return reasons;
}

function minutes(seconds: number): string {
  return roundHalfEven(seconds / SECONDS_PER_MINUTE, 1);
}

function celsius(value: number): string {
  return roundHalfEven(value, 3);
}
