import type { Mounted, Sensor } from "./bench";
import { type Budgets, budgets } from "./budgets";
import type { ComparedPoint } from "./compare-point";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import { repeatabilityInWindow } from "./repeatability-in-window";
import { inhomogeneityAt } from "./resolve-input";
import type { Evidence } from "./schema";
import type { SetpointInWindow } from "./setpoint-windows";
import type { TemperatureStage } from "./temperature-stage";

/** Both budgets of a compared point: its inputs as they act at this setpoint, then every line. */
export function budgetPoint(
  evidence: Evidence,
  mounted: Mounted<Sensor>,
  at: SetpointInWindow,
  stage: TemperatureStage,
  compared: ComparedPoint,
): EvidenceOutcome<Budgets> {
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
  const both = budgets(evidence, sensor, stage, compared.referenceCelsius);
  return both.ok ? got(both.value) : missing(mounted.itemPath, both.problem.message);
}
