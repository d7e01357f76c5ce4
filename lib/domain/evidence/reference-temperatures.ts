import { referenceTemperature } from "@/lib/metrology/comparison/reference-temperature";
import type { ReferenceSeries } from "@/lib/metrology/stability/stability-types";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { type BenchInput, type Mounted, mountBench, type Reference } from "./bench";
import { indicationCorrector, type Window } from "./channel-window";
import { deviationNodes } from "./reference-stage";
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
  const nodes = deviationNodes(mounted.item);
  const junction = emf(mounted.reference, mounted.junction.celsius);
  const { readings } = mounted;
  for (let i = 0; readings && i < readings.seconds.length; i += 1) {
    const at = readings.seconds[i] as number;
    if (at < window.fromSeconds || at > window.toSeconds) continue;
    const signed = correct(readings.microvolts[i] as number) * (readings.polarity[i] as number);
    const total = junction.ok ? signed + junction.value : Number.NaN;
    const temperature = referenceTemperature(mounted.reference, nodes, total);
    if (temperature.ok) {
      seconds.push(at);
      celsius.push(temperature.value);
    } else {
      refused.push({ seconds: at, message: temperature.problem.message });
    }
  }
  return { id: mounted.item.id, channel: mounted.place.channel, seconds, celsius, refused };
}
