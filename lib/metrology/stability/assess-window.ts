import { lineAt, linearFit } from "../number/linear-fit";
import { found, type Outcome, refused } from "../outcome";
import { firstAfter, firstAtOrAfter } from "./bounds";
import { judgeWindow } from "./judge-window";
import type {
  ReferenceInWindow,
  ReferenceSeries,
  StabilityCriterion,
  WindowAssessment,
} from "./stability-types";

const SECONDS_PER_MINUTE = 60;

/**
 * The numbers of a stability window, the same for a proposed one and for one a person has moved: both
 * ends belong to it. A problem only where there is nothing to compute from; a window that fails the
 * criterion is assessed, with its reasons. Times in s, temperatures in °C, slope in °C/min (this project's own rule; slope as
 * `linearFit`). Problems: `too-few` references or readings; `outside-range` for a window that ends before it begins;
 * `not-finite`.
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
  return found(judgeWindow(inWindow, fromSeconds, toSeconds, criterion));
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
