import { firstAfter, firstAtOrAfter } from "@/lib/metrology/stability/bounds";
import type { ReferenceSeries } from "@/lib/metrology/stability/stability-types";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { temperature } from "@/lib/metrology/thermocouple/temperature";
import { type BenchInput, type Mounted, mountBench, type Reference } from "./bench";
import { certifiedTemperatures } from "./certified-temperatures";
import { indicationCorrector, type Window } from "./channel-window";
import type { EvidenceProblem } from "./evaluation";
import { type PreparedReference, prepareReference } from "./prepare-reference";
import type { Evidence } from "./schema";

/** A reading that has no temperature (an open circuit, say) is left out of the series and named here. */
export type RefusedReading = { readonly seconds: number; readonly message: string };

/** `id` is the reference's id; `seconds` and `celsius` have one length. */
export type ReferenceTemperatures = ReferenceSeries & {
  readonly channel: string;
  readonly refused: readonly RefusedReading[];
};

export type ReferenceTemperaturesInput = BenchInput & Pick<Evidence, "voltmeter">;

/**
 * The references' temperatures reading by reading: indication corrected and signed, junction added as
 * emf, deviation solved for. For plots and windows: beyond its certified points the deviation is held
 * constant, where an evaluation would refuse. Give a window to convert no more than it holds.
 */
export function referenceTemperatures(
  input: ReferenceTemperaturesInput,
  window: Window = { fromSeconds: Number.NEGATIVE_INFINITY, toSeconds: Number.POSITIVE_INFINITY },
): ReferenceTemperatures[] {
  const correct = indicationCorrector(input.voltmeter.corrections);
  return mountBench(input).references.map((mounted) => convert(input, mounted, correct, window));
}

function convert(
  input: ReferenceTemperaturesInput,
  mounted: Mounted<Reference>,
  correct: (microvolt: number) => number,
  window: Window,
): ReferenceTemperatures {
  const prepared = prepareReference(mounted, input);
  if (!prepared.ok) return nothing(mounted, prepared.problems);
  const { curve, drift } = prepared.value;
  const junction = emf(mounted.reference, mounted.junction.celsius);
  const { readings } = mounted;
  // Times rise: only the window's own readings are visited.
  const first = readings ? firstAtOrAfter(readings.seconds, window.fromSeconds) : 0;
  const end = readings ? firstAfter(readings.seconds, window.toSeconds) : 0;
  const seconds = readings?.seconds.slice(first, end) ?? [];
  const totals = new Float64Array(seconds.length);
  for (let i = first; readings && i < end; i += 1) {
    const signed = correct(readings.microvolts[i] as number) * (readings.polarity[i] as number);
    totals[i - first] = junction.ok ? signed + junction.value : Number.NaN;
  }
  const identity = { id: mounted.item.id, channel: mounted.place.channel };
  const all = certifiedTemperatures(mounted.reference, totals, curve.added);
  if (all) {
    return { ...identity, seconds, celsius: Array.from(all, (t) => t - drift.correctedCelsius), refused: [] };
  }
  return { ...identity, ...oneByOne(mounted, seconds, totals, prepared.value) };
}

/** Where one reading has no temperature, the others still have theirs. */
function oneByOne(
  { reference }: Mounted<Reference>,
  seconds: readonly number[],
  totals: Float64Array,
  { curve, drift }: PreparedReference,
): Pick<ReferenceTemperatures, "seconds" | "celsius" | "refused"> {
  const kept: number[] = [];
  const celsius: number[] = [];
  const refused: RefusedReading[] = [];
  for (const [i, at] of seconds.entries()) {
    const converted = temperature(reference, totals[i] as number, curve.added);
    if (converted.ok) {
      kept.push(at);
      celsius.push(converted.value - drift.correctedCelsius);
    } else {
      refused.push({ seconds: at, message: converted.problem.message });
    }
  }
  return { seconds: kept, celsius, refused };
}

/** A certificate that cannot be used gives no temperatures; why is said once, at the first reading. */
function nothing(mounted: Mounted<Reference>, problems: readonly EvidenceProblem[]): ReferenceTemperatures {
  const at = mounted.readings?.seconds[0] ?? 0;
  const refused = problems.map(({ message }) => ({ seconds: at, message }));
  return { id: mounted.item.id, channel: mounted.place.channel, seconds: [], celsius: [], refused };
}
