import type { Mounted } from "./bench";
import type { Window } from "./channel-window";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import type { Evidence } from "./schema";
import type { RepeatabilityInput, UncertaintyInput } from "./uncertainty-input";

/** The repeatability as stated, or from the block means of this channel's own readings in the window. */
export function repeatabilityInWindow<Item>(
  input: RepeatabilityInput,
  _mounted: Mounted<Item>,
  _window: Window,
  _evidence: Evidence,
  path: string,
): EvidenceOutcome<UncertaintyInput> {
  if (input.kind !== "block-means") return got(input);
  return missing(path, "Block means are not evaluated yet.");
}
