import { firstAfter, firstAtOrAfter } from "@/lib/metrology/stability/bounds";
import type { ReferenceSeries } from "@/lib/metrology/stability/stability-types";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { temperature } from "@/lib/metrology/thermocouple/temperature";
import { type BenchInput, type Mounted, mountBench, type Reference } from "./bench";
import { indicationCorrector, type Window } from "./channel-window";
import { deviationOf } from "./reference-correction";
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
  return mountBench(input).references.map((mounted) => convert(mounted, correct, window));
}

function convert(
  mounted: Mounted<Reference>,
  correct: (microvolt: number) => number,
  window: Window,
): ReferenceTemperatures {
  const seconds: number[] = [];
  const celsius: number[] = [];
  const refused: RefusedReading[] = [];
  const deviation = deviationOf(mounted.item.correction, mounted.reference);
  const junction = emf(mounted.reference, mounted.junction.celsius);
  const { readings } = mounted;
  // Times rise: only the window's own readings are visited.
  const first = readings ? firstAtOrAfter(readings.seconds, window.fromSeconds) : 0;
  const end = readings ? firstAfter(readings.seconds, window.toSeconds) : 0;
  for (let i = first; readings && i < end; i += 1) {
    const at = readings.seconds[i] as number;
    const signed = correct(readings.microvolts[i] as number) * (readings.polarity[i] as number);
    const total = junction.ok ? signed + junction.value : Number.NaN;
    const converted = temperature(mounted.reference, total, deviation);
    if (converted.ok) {
      seconds.push(at);
      celsius.push(converted.value);
    } else {
      refused.push({ seconds: at, message: converted.problem.message });
    }
  }
  return { id: mounted.item.id, channel: mounted.place.channel, seconds, celsius, refused };
}
