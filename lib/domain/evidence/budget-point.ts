import type { Mounted, Sensor } from "./bench";
import { type Budgets, budgets } from "./budgets";
import type { ComparedPoint } from "./compare-point";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import { interpolationAt } from "./prepare-reference";
import { repeatabilityInWindow } from "./repeatability-in-window";
import { inhomogeneityAt } from "./resolve-input";
import type { Evidence } from "./schema";
import { sensitivityInUse } from "./sensitivity";
import type { SetpointInWindow } from "./setpoint-windows";
import type { ReferenceForBudget } from "./temperature-budget";

/** Both budgets of a compared point: its inputs as they act at this setpoint, then every line. */
export function budgetPoint(
  evidence: Evidence,
  mounted: Mounted<Sensor>,
  at: SetpointInWindow,
  compared: ComparedPoint,
): EvidenceOutcome<Budgets> {
  const references = referencesForBudget(evidence, at, compared);
  if (!references.ok) return references;
  const { item } = mounted;
  const { nominalCelsius } = at.setpoint;
  const inhomogeneity = inhomogeneityAt(item.inhomogeneity, item.type, nominalCelsius);
  if (!inhomogeneity.ok) {
    return missing(`${mounted.itemPath}.inhomogeneity`, inhomogeneity.problem.message);
  }
  const path = `${mounted.itemPath}.repeatability`;
  const repeatability = repeatabilityInWindow(item.repeatability, mounted, at.window, evidence, path);
  if (!repeatability.ok) return repeatability;
  const sensor = {
    mounted,
    sensitivity: {
      microvoltPerCelsius: compared.seebeckMicrovoltPerCelsius,
      atJunctionMicrovoltPerCelsius: compared.atJunctionMicrovoltPerCelsius,
    },
    repeatability: repeatability.value,
    inhomogeneity: inhomogeneity.value,
    indicatedMicrovolt: compared.indicatedMicrovolt,
    emfMicrovolt: compared.emfMicrovolt,
    nominalCelsius,
    carriedCelsius: compared.carriedCelsius,
  };
  const both = budgets(evidence, sensor, references.value, compared.referenceCelsius);
  return both.ok ? got(both.value) : missing(mounted.itemPath, both.problem.message);
}

function referencesForBudget(
  evidence: Evidence,
  at: SetpointInWindow,
  compared: ComparedPoint,
): EvidenceOutcome<ReferenceForBudget[]> {
  const all: ReferenceForBudget[] = [];
  for (const [i, { mounted, prepared, channel }] of at.references.entries()) {
    const evaluated = compared.references[i];
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
    all.push({
      mounted,
      sensitivity: sensitivity.value,
      interpolation: interpolationAt(mounted.item, prepared, evaluated.celsius),
      drift: prepared.drift.input,
      repeatability: repeatability.value,
      indicatedMicrovolt: channel.microvolt,
      emfMicrovolt: evaluated.emfMicrovolt,
    });
  }
  return got(all);
}
