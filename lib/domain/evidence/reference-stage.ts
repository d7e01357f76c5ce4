import { mean } from "@/lib/metrology/number/mean";
import { temperature } from "@/lib/metrology/thermocouple/temperature";
import type { Mounted, Reference } from "./bench";
import type { ChannelInWindow } from "./channel-window";
import type { EvaluatedReference } from "./evaluation";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import { certifiedRange, deviationOf } from "./reference-correction";

export type ReferenceInWindow = { readonly mounted: Mounted<Reference>; readonly channel: ChannelInWindow };

export type ReferencesAt = {
  readonly references: readonly EvaluatedReference[];
  /** Mean of the references in space, at the moment asked for. */
  readonly celsius: number;
};

/**
 * The references' temperatures at the moment the sensor was read on average: each reference's emf is
 * carried there along its own drift over the window, so that a drifting furnace cancels.
 */
export function referencesAt(
  all: readonly ReferenceInWindow[],
  seconds: number,
): EvidenceOutcome<ReferencesAt> {
  const references: EvaluatedReference[] = [];
  for (const { mounted, channel } of all) {
    const drift = channel.slopeMicrovoltPerSecond * (seconds - channel.seconds);
    const emfMicrovolt = channel.microvolt + channel.junctionMicrovolt + drift;
    const deviation = deviationOf(mounted.item.correction, mounted.reference);
    const celsius = temperature(mounted.reference, emfMicrovolt, deviation);
    if (!celsius.ok) return missing(mounted.readingsPath, celsius.problem.message);
    const beyond = beyondCertificate(mounted, celsius.value);
    if (beyond) return { ok: false, problems: [beyond] };
    references.push({
      reference: mounted.item.id,
      emfMicrovolt,
      deviationMicrovolt: deviation(celsius.value).value,
      celsius: celsius.value,
    });
  }
  return got({ references, celsius: mean(references.map((reference) => reference.celsius)) });
}

/** A temperature that stands exactly on the last point may come out of the solver a trifle beyond it. */
const SOLVER_CELSIUS = 1e-6;

function beyondCertificate({ item, itemPath }: Mounted<Reference>, celsius: number) {
  const { fromCelsius, toCelsius } = certifiedRange(item.correction);
  if (celsius >= fromCelsius - SOLVER_CELSIUS && celsius <= toCelsius + SOLVER_CELSIUS) return null;
  const { correction } = item;
  const single = correction.kind === "points" && correction.points.length === 1 ? correction : null;
  const certified = single
    ? `${single.points[0]?.celsius} °C and ${single.singlePointReachCelsius ?? 0} °C each side`
    : `${fromCelsius} °C to ${toCelsius} °C`;
  return {
    path: `${itemPath}.correction`,
    message: `Reference ${item.id} reads ${celsius.toFixed(2)} °C, and its certificate holds for ${certified}: use a reference certified there, or leave the setpoint out.`,
  };
}
