import { roundHalfEven } from "../number/decimal";
import { mean } from "../number/mean";
import { assessWindow } from "./assess-window";
import { DWELL_CELSIUS, type Dwell, findDwell } from "./find-dwell";
import { type RunningSums, runningSums } from "./running-sums";
import {
  LEAST_READINGS,
  type ReferenceSeries,
  type StabilityCriterion,
  type WindowProposal,
} from "./stability-types";

/**
 * Proposes a window for one setpoint: within its dwell, the latest stretch of the least length that meets
 * the criterion, taken back towards the beginning for as long as it still does. The end of a dwell is
 * where the load is most at rest (this project's own rule), and a person sees why the window begins where it begins.
 * Times in s, temperatures in °C. Problems (no reference, a reading that is no number, no dwell, a criterion not met) come
 * back as the reason, in words.
 */
export function proposeWindow(
  references: readonly ReferenceSeries[],
  nominalCelsius: number,
  criterion: StabilityCriterion,
): WindowProposal {
  const unusable = whyUnusable(references);
  if (unusable) return { kind: "none", reason: unusable };
  const dwell = findDwell(references, nominalCelsius);
  if (!dwell) {
    return {
      kind: "none",
      reason: `The references never came within ${DWELL_CELSIUS} °C of ${nominalCelsius} °C.`,
    };
  }
  const search = new WindowSearch(references, nominalCelsius, criterion, dwell);
  const bounds = search.latest();
  const assessment = bounds && assessWindow(references, bounds.fromSeconds, bounds.toSeconds, criterion);
  if (!assessment?.ok) {
    return { kind: "none", reason: whyNone(references, dwell, nominalCelsius, criterion) };
  }
  return { kind: "proposed", window: assessment.value };
}

function whyUnusable(references: readonly ReferenceSeries[]): string | null {
  if (references.length === 0) return "There is no reference to judge the furnace by.";
  for (const { id, seconds, celsius } of references) {
    if (seconds.length !== celsius.length) return `Reference ${id} has not as many times as temperatures.`;
    for (let i = 0; i < seconds.length; i += 1) {
      if (!Number.isFinite(celsius[i]) || !Number.isFinite(seconds[i])) {
        return `Reference ${id} has a reading that is not a number (number ${i + 1}).`;
      }
    }
  }
  return null;
}

function whyNone(
  references: readonly ReferenceSeries[],
  dwell: Dwell,
  nominalCelsius: number,
  criterion: StabilityCriterion,
): string {
  const minutes = (seconds: number): string => roundHalfEven(seconds / 60, 1);
  const length = dwell.toSeconds - dwell.fromSeconds;
  if (length < criterion.minimumSeconds) {
    return `The furnace stood within ${DWELL_CELSIUS} °C of ${nominalCelsius} °C for ${minutes(length)} min only; a window needs ${minutes(criterion.minimumSeconds)} min.`;
  }
  // Name what is wrong with the end of the dwell, where it should have been at rest.
  const last = assessWindow(
    references,
    dwell.toSeconds - criterion.minimumSeconds,
    dwell.toSeconds,
    criterion,
  );
  const because = last.ok ? last.value.reasons.join(" ") : last.problem.message;
  return `The furnace never came to rest at ${nominalCelsius} °C. In the last ${minutes(criterion.minimumSeconds)} min: ${because}`;
}

class WindowSearch {
  private readonly sums: readonly RunningSums[];
  /** Where a window may begin and end: at any reading of any reference within the dwell. */
  private readonly times: readonly number[];
  private readonly criterion: StabilityCriterion;

  constructor(
    references: readonly ReferenceSeries[],
    nominalCelsius: number,
    criterion: StabilityCriterion,
    dwell: Dwell,
  ) {
    this.criterion = criterion;
    this.sums = references.map((reference) => runningSums(reference, nominalCelsius));
    const times = new Set<number>();
    for (const { seconds } of references) {
      for (let i = 0; i < seconds.length; i += 1) {
        const t = seconds[i] as number;
        if (t >= dwell.fromSeconds && t <= dwell.toSeconds) times.add(t);
      }
    }
    this.times = [...times].sort((a, b) => a - b);
  }

  latest(): Dwell | null {
    const { times } = this;
    let from = times.length - 1;
    for (let to = times.length - 1; to > 0; to -= 1) {
      const end = times[to] as number;
      while (from >= 0 && end - (times[from] as number) < this.criterion.minimumSeconds) from -= 1;
      if (from < 0) return null;
      if (this.meets(times[from] as number, end))
        return { fromSeconds: this.extend(from, end), toSeconds: end };
    }
    return null;
  }

  private extend(from: number, end: number): number {
    let first = from;
    while (first > 0 && this.meets(this.times[first - 1] as number, end)) first -= 1;
    return this.times[first] as number;
  }

  private meets(from: number, to: number): boolean {
    const lines = this.sums.map((sums) => sums.line(from, to));
    const slopes: number[] = [];
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const line of lines) {
      if (!line || line.readings < LEAST_READINGS) return false;
      const value = line.at((from + to) / 2);
      low = Math.min(low, value);
      high = Math.max(high, value);
      slopes.push(line.slope);
    }
    const drift = Math.abs(mean(slopes)) * (to - from);
    return drift <= this.criterion.slopeTimesLengthCelsius && high - low <= this.criterion.agreementCelsius;
  }
}
