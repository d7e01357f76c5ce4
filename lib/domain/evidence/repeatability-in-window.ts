import { typeAFromBlocks } from "@/lib/metrology/comparison/type-a-from-blocks";
import { lineAt, linearFit } from "@/lib/metrology/number/linear-fit";
import { firstAfter, firstAtOrAfter } from "@/lib/metrology/stability/bounds";
import type { Mounted } from "./bench";
import { indicationCorrector, type Window } from "./channel-window";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import type { Evidence } from "./schema";
import type { RepeatabilityInput, UncertaintyInput } from "./uncertainty-input";

/**
 * The repeatability as stated, or from the block means of this channel's own readings in the window, its linear
 * drift taken out: the furnace's drift is the comparison's matter, not a scatter of the reading.
 */
export function repeatabilityInWindow<Item>(
  input: RepeatabilityInput,
  { readings, place }: Mounted<Item>,
  window: Window,
  evidence: Pick<Evidence, "voltmeter">,
  path: string,
): EvidenceOutcome<UncertaintyInput> {
  if (input.kind !== "block-means") return got(input);
  const from = readings ? firstAtOrAfter(readings.seconds, window.fromSeconds) : 0;
  const to = readings ? firstAfter(readings.seconds, window.toSeconds) : 0;
  const correct = indicationCorrector(evidence.voltmeter.corrections);
  const seconds = readings?.seconds.slice(from, to) ?? [];
  const signed = seconds.map(
    (_, i) => correct(readings?.microvolts[from + i] as number) * (readings?.polarity[from + i] as number),
  );
  const line = linearFit(seconds, signed);
  if (!line.ok) return missing(path, `Channel ${place.channel}: ${line.problem.message}.`);
  const values = signed.map((value, i) => value - lineAt(line.value, seconds[i] as number));
  const typeA = typeAFromBlocks({ seconds, values }, input.blockSeconds, 1);
  if (!typeA.ok) return missing(path, `Channel ${place.channel}: ${typeA.problem.message}.`);
  const { standardUncertainty, degreesOfFreedom, blocks } = typeA.value;
  return got({
    kind: "standard",
    standard: standardUncertainty,
    unit: "microvolt",
    degreesOfFreedom,
    source: `${input.source}: ${blocks} blocks of ${input.blockSeconds} s in the window`,
  });
}
