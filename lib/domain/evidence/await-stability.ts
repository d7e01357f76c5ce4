import { approachSince } from "@/lib/metrology/stability/approach-since";
import { assessWindow } from "@/lib/metrology/stability/assess-window";
import type {
  ReferenceSeries,
  StabilityCriterion,
  WindowAssessment,
} from "@/lib/metrology/stability/stability-types";
import { type TimeToStable, timeToStable } from "@/lib/metrology/stability/time-to-stable";

/** What a person at the furnace waits for at a setpoint the references stand at. */
export type StabilityWait = {
  /** The last stretch of least length, or all there is: its reasons are what is missing. */
  readonly latest: WindowAssessment;
  readonly forecast:
    | { readonly kind: "expected"; readonly time: TimeToStable }
    /** Drift and spread are met: what is missing does not come by itself. */
    | { readonly kind: "not-by-waiting" }
    | { readonly kind: "unknown"; readonly reason: string };
};

/** Null where the references do not stand at the setpoint, or have hardly been read there: there is nothing to wait for yet. */
export function awaitStability(
  references: readonly ReferenceSeries[],
  nominalCelsius: number,
  criterion: StabilityCriterion,
): StabilityWait | null {
  const since = approachSince(references, nominalCelsius);
  if (since === null) return null;
  const now = Math.max(...references.map(({ seconds }) => seconds[seconds.length - 1] as number));
  const from = Math.max(since, now - criterion.minimumSeconds);
  const latest = assessWindow(references, from, now, criterion);
  if (!latest.ok) return null;
  return { latest: latest.value, forecast: forecastOf(references, since, now, latest.value) };
}

function forecastOf(
  references: readonly ReferenceSeries[],
  since: number,
  now: number,
  { criterion, lengthSeconds, slopeTimesLengthCelsius }: WindowAssessment,
): StabilityWait["forecast"] {
  const isLongEnough = lengthSeconds >= criterion.minimumSeconds;
  if (isLongEnough && slopeTimesLengthCelsius <= criterion.slopeTimesLengthCelsius) {
    return { kind: "not-by-waiting" };
  }
  const time = timeToStable(references, since, now, criterion);
  return time.ok ? { kind: "expected", time: time.value } : { kind: "unknown", reason: time.problem.message };
}
