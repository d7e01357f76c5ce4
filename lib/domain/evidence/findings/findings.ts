import type { EvidenceFinding } from "../evaluation";
import { findBeyondStandard } from "./find-beyond-standard";
import { findDoubleCounting } from "./find-double-counting";
import { findInvalidCalibrations } from "./find-invalid-calibrations";
import { findLargeDeviations } from "./find-large-deviations";
import { findShortedChannels } from "./find-shorted-channels";
import { findSwappedChannels } from "./find-swapped-channels";
import { findTipChecks } from "./find-tip-checks";
import { findUnstableWindows } from "./find-unstable-windows";
import type { FindingInput } from "./finding-input";

/** What a person must look at, gravest first. None of it stops the evaluation. */
export function findings(input: FindingInput): EvidenceFinding[] {
  return [
    ...findSwappedChannels(input.bench, input.setpoints),
    ...findLargeDeviations(input),
    ...findBeyondStandard(input),
    ...findUnstableWindows(input),
    ...findDoubleCounting(input),
    ...findInvalidCalibrations(input),
    ...findShortedChannels(input),
    ...findTipChecks(input),
  ];
}
