import { assessWindow } from "@/lib/metrology/stability/assess-window";
import type { ReferenceSeries, StabilityCriterion } from "@/lib/metrology/stability/stability-types";

/** The first end of a trailing window of least length that meets the criterion, or null: what a person would wait for. */
export function settledAt(
  references: readonly ReferenceSeries[],
  criterion: StabilityCriterion,
  fromSeconds = 0,
): number | null {
  const lead = references[0]?.seconds ?? [];
  for (let i = 0; i < lead.length; i += 1) {
    const end = lead[i] as number;
    if (end < fromSeconds + criterion.minimumSeconds) continue;
    const window = assessWindow(references, end - criterion.minimumSeconds, end, criterion);
    if (window.ok && window.value.meets) return end;
  }
  return null;
}
