import { found, type Outcome, refused } from "../outcome";
import { judgeWindow } from "./judge-window";
import { type SlidingStretch, slidingStretch } from "./sliding-stretch";
import type { ReferenceInWindow, StabilityCriterion, WindowAssessment } from "./stability-types";

/** One scan: each reference's own time and temperature, in the order in which the references were named. */
export type StabilityScan = readonly { readonly seconds: number; readonly celsius: number }[];

export type StabilityStream = {
  /** Takes a scan and judges the window that ends with it. */
  push(scan: StabilityScan): Outcome<WindowAssessment>;
  /** How many stretches have been joined so far: what a test counts to see that the work does not grow. */
  joins(): number;
};

const SECONDS_PER_MINUTE = 60;
/** The window reaches this much further back than the least length, so that rounding cannot make it too short. */
const OVERHANG = 1 + 1 / 1099511627776;

/**
 * The stability of a furnace as it is read: after each scan, the judgement of the last stretch of least length, or of all
 * there is before that. The work of a scan does not depend on how long the window or the stream is (`slidingStretch`).
 *
 * Source: laboratory policy (`judgeWindow`). The numbers are those `assessWindow` finds for the same ends, to 1e-9 °C: they
 * are summed in another order, so a window whose drift is within that of its limit may be judged either way. `ids`: the
 * references. Scans in seconds and °C. Problems of `push`: `not-applicable` for a scan of another number of references;
 * `outside-range` for a reading that is not later than that reference's last (nothing is taken then); `too-few` before
 * two scans; `not-finite` while a reading in the window is no number.
 */
export function stabilityStream(ids: readonly string[], criterion: StabilityCriterion): StabilityStream {
  const references = ids.map((id) => ({ id, held: slidingStretch(), last: Number.NEGATIVE_INFINITY }));
  let begun = Number.POSITIVE_INFINITY;
  return {
    push(scan) {
      if (ids.length === 0 || scan.length !== ids.length) {
        return refused("not-applicable", `a scan of ${scan.length} readings for ${ids.length} references`);
      }
      const pairs = references.map((reference, i) => ({
        reference,
        reading: scan[i] as StabilityScan[number],
      }));
      const late = pairs.find(({ reference, reading }) => !(reading.seconds > reference.last));
      if (late)
        return refused("outside-range", `reference ${late.reference.id} is not read later than before`);
      for (const { reference, reading } of pairs) {
        reference.held.push(reading.seconds, reading.celsius);
        reference.last = reading.seconds;
        begun = Math.min(begun, reading.seconds);
      }
      const to = Math.max(...scan.map(({ seconds }) => seconds));
      const reach = to - criterion.minimumSeconds * OVERHANG;
      for (const { held } of references) held.dropBefore(reach);
      return judged(references, Math.max(reach, begun), to, criterion);
    },
    joins: () => references.reduce((total, { held }) => total + held.joins(), 0),
  };
}

function judged(
  references: readonly { readonly id: string; readonly held: SlidingStretch }[],
  from: number,
  to: number,
  criterion: StabilityCriterion,
): Outcome<WindowAssessment> {
  const inWindow: ReferenceInWindow[] = [];
  for (const { id, held } of references) {
    const stretch = held.stretch();
    if (!stretch || stretch.count < 2) {
      return refused("too-few", `reference ${id} has not been read twice in the window`);
    }
    const slope = stretch.products / stretch.squares;
    const celsius = stretch.meanCelsius + slope * ((from + to) / 2 - stretch.meanSeconds);
    if (!Number.isFinite(celsius)) {
      return refused("not-finite", `reference ${id} has a reading in the window that is not a number`);
    }
    inWindow.push({
      id,
      readings: stretch.count,
      celsius,
      slopeCelsiusPerMinute: slope * SECONDS_PER_MINUTE,
      spreadCelsius: stretch.highest - stretch.lowest,
    });
  }
  return found(judgeWindow(inWindow, from, to, criterion));
}
