import { interpolate } from "@/lib/metrology/comparison/interpolate";
import { referenceTemperature } from "@/lib/metrology/comparison/reference-temperature";
import { mean } from "@/lib/metrology/number/mean";
import type { Mounted, Reference } from "./bench";
import type { ChannelInWindow } from "./channel-window";
import type { EvaluatedReference } from "./evaluation";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";

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
    const nodes = deviationNodes(mounted.item);
    const celsius = referenceTemperature(mounted.reference, nodes, emfMicrovolt);
    if (!celsius.ok) return missing(mounted.readingsPath, celsius.problem.message);
    const beyond = beyondCertificate(mounted, celsius.value);
    if (beyond) return { ok: false, problems: [beyond] };
    references.push({
      reference: mounted.item.id,
      emfMicrovolt,
      deviationMicrovolt: interpolate(nodes, celsius.value).value,
      celsius: celsius.value,
    });
  }
  return got({ references, celsius: mean(references.map((reference) => reference.celsius)) });
}

export function deviationNodes(reference: Reference): { readonly x: number; readonly y: number }[] {
  return reference.deviations.map(({ celsius: x, deviationMicrovolt: y }) => ({ x, y }));
}

/** A temperature that stands exactly on the last point may come out of the solver a trifle beyond it. */
const SOLVER_CELSIUS = 1e-6;

/** A certificate speaks between its points only; one point alone speaks as far as its reach. */
function beyondCertificate(mounted: Mounted<Reference>, celsius: number) {
  const { deviations, id, singlePointReachCelsius = 0 } = mounted.item;
  const first = deviations[0]?.celsius ?? Number.NaN;
  const last = deviations.at(-1)?.celsius ?? Number.NaN;
  const reach = deviations.length === 1 ? singlePointReachCelsius : 0;
  if (celsius >= first - reach - SOLVER_CELSIUS && celsius <= last + reach + SOLVER_CELSIUS) return null;
  const certified =
    deviations.length === 1 ? `${first} °C and ${reach} °C each side` : `${first} °C to ${last} °C`;
  return {
    path: `${mounted.itemPath}.deviations`,
    message: `Reference ${id} reads ${celsius.toFixed(2)} °C, and its certificate holds for ${certified}: use a reference certified there, or leave the setpoint out.`,
  };
}
