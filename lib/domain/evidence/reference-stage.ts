import { mean } from "@/lib/metrology/number/mean";
import type { CorrectionCurve } from "@/lib/metrology/standard/correction-curve";
import { temperature } from "@/lib/metrology/thermocouple/temperature";
import type { Mounted, Reference } from "./bench";
import type { ChannelInWindow } from "./channel-window";
import type { EvaluatedReference } from "./evaluation";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import type { PreparedReference } from "./prepare-reference";

export type ReferenceInWindow = {
  readonly mounted: Mounted<Reference>;
  readonly prepared: PreparedReference;
  readonly channel: ChannelInWindow;
};

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
  for (const { mounted, prepared, channel } of all) {
    const moved = channel.slopeMicrovoltPerSecond * (seconds - channel.seconds);
    const emfMicrovolt = channel.microvolt + channel.junctionMicrovolt + moved;
    const { curve, drift } = prepared;
    const certified = temperature(mounted.reference, emfMicrovolt, curve.added);
    if (!certified.ok) return missing(mounted.readingsPath, certified.problem.message);
    const beyond = beyondCertificate(mounted, curve, certified.value);
    if (beyond) return { ok: false, problems: [beyond] };
    references.push({
      reference: mounted.item.id,
      emfMicrovolt,
      deviationMicrovolt: curve.added(certified.value).value,
      celsius: certified.value - drift.correctedCelsius,
    });
  }
  return got({ references, celsius: mean(references.map((reference) => reference.celsius)) });
}

/** A temperature that stands exactly on the last point may come out of the solver a trifle beyond it. */
const SOLVER_CELSIUS = 1e-6;

function beyondCertificate(
  { item, itemPath }: Mounted<Reference>,
  { fromCelsius, toCelsius }: CorrectionCurve,
  celsius: number,
) {
  if (celsius >= fromCelsius - SOLVER_CELSIUS && celsius <= toCelsius + SOLVER_CELSIUS) return null;
  const { correction } = item;
  const [single, ...others] = "points" in correction ? correction.points : [];
  const certified =
    single && others.length === 0
      ? `${single.celsius} °C and ${toCelsius - single.celsius} °C each side`
      : `${fromCelsius} °C to ${toCelsius} °C`;
  return {
    path: `${itemPath}.correction`,
    message: `Reference ${item.id} reads ${celsius.toFixed(2)} °C, and its certificate holds for ${certified}: use a reference certified there, or leave the setpoint out.`,
  };
}
