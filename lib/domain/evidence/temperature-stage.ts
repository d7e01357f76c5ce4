import { mean } from "@/lib/metrology/number/mean";
import { combine } from "@/lib/metrology/uncertainty/combine";
import type { Line } from "./contribution";
import type { StageTotal } from "./emf-budget";
import { type EvidenceOutcome, got } from "./evidence-outcome";
import { interpolationAt } from "./prepare-reference";
import { referencesAt } from "./reference-stage";
import { repeatabilityInWindow } from "./repeatability-in-window";
import type { Evidence } from "./schema";
import { sensitivityInUse } from "./sensitivity";
import type { SetpointInWindow } from "./setpoint-windows";
import { type ReferenceForBudget, temperatureLines } from "./temperature-budget";

export type TemperatureStage = StageTotal & {
  readonly references: readonly ReferenceForBudget[];
  readonly lines: readonly Line[];
};

/**
 * The first stage of all sensors in one window, at the references' mean moment: from one sensor's moment to another's the
 * references' temperature moves, their uncertainties do not.
 */
export function temperatureStage(
  evidence: Evidence,
  at: SetpointInWindow,
): EvidenceOutcome<TemperatureStage> {
  const moment = mean(at.references.map(({ channel }) => channel.seconds));
  const there = referencesAt(at.references, moment);
  if (!there.ok) return there;
  const references: ReferenceForBudget[] = [];
  for (const [i, { mounted, prepared, channel }] of at.references.entries()) {
    const evaluated = there.value.references[i];
    if (!evaluated) continue;
    const sensitivity = sensitivityInUse(evidence.sensitivities, mounted, evaluated.celsius);
    if (!sensitivity.ok) return sensitivity;
    const repeatability = repeatabilityInWindow(
      evidence.referenceRepeatability,
      mounted,
      at.window,
      evidence,
      "referenceRepeatability",
    );
    if (!repeatability.ok) return repeatability;
    references.push({
      mounted,
      sensitivity: sensitivity.value,
      interpolation: interpolationAt(mounted.item, prepared, evaluated.celsius),
      drift: prepared.drift.input,
      repeatability: repeatability.value,
      indicatedMicrovolt: channel.microvolt,
      emfMicrovolt: evaluated.emfMicrovolt,
    });
  }
  const lines = temperatureLines(evidence, references, there.value.celsius, at.setpoint.nominalCelsius);
  const { standardUncertainty: combined, degreesOfFreedom } = combine(lines);
  return got({ references, lines, combined, degreesOfFreedom });
}
