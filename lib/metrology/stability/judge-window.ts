import { roundHalfEven } from "../number/decimal";
import { mean } from "../number/mean";
import {
  LEAST_READINGS,
  type ReferenceInWindow,
  type StabilityCriterion,
  type WindowAssessment,
} from "./stability-types";

const SECONDS_PER_MINUTE = 60;

/**
 * Judges a window by what each reference shows in it: one place for a window assessed from its readings and for the window
 * of a live stream, so that the two cannot disagree about a rule.
 *
 * Source: laboratory policy: length, |slope| × length, spread where it is limited, and the references within U of
 * their difference. `inWindow`: one reference at least, finite, °C and °C/min; the ends in seconds. No error cases.
 */
export function judgeWindow(
  inWindow: readonly ReferenceInWindow[],
  fromSeconds: number,
  toSeconds: number,
  criterion: StabilityCriterion,
): WindowAssessment {
  const temperatures = inWindow.map((one) => one.celsius);
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
  return { ...numbers, meets: reasons.length === 0, reasons };
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
  const spreadLimit = criterion.spreadCelsius;
  if (spreadLimit !== undefined && numbers.spreadCelsius > spreadLimit) {
    reasons.push(
      `The readings of one reference spread over ${celsius(numbers.spreadCelsius)} °C; at most ${spreadLimit} °C is allowed.`,
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
