import { assessConformity } from "./assess-conformity";
import type { Mounted, Sensor } from "./bench";
import { budgetPoint } from "./budget-point";
import { type ComparedPoint, comparePoint } from "./compare-point";
import type { MeasuredPoint } from "./evaluation";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import { pointScope, reportedCelsius } from "./point-scope";
import { printPoint } from "./print-point";
import { referencesAt } from "./reference-stage";
import type { Evidence } from "./schema";
import { sensorScope } from "./sensor-scope";
import type { SetpointInWindow } from "./setpoint-windows";
import type { TemperatureStage } from "./temperature-stage";

/** One sensor at one setpoint: comparison, both budgets, coverage, conformity, print. */
export function evaluatePoint(
  evidence: Evidence,
  mounted: Mounted<Sensor>,
  at: SetpointInWindow,
  stage: EvidenceOutcome<TemperatureStage>,
): EvidenceOutcome<MeasuredPoint> {
  const channel = at.channels.get(mounted.place.channel);
  if (!channel) return missing(mounted.readingsPath, `Channel ${mounted.place.channel} was not read.`);
  if (!channel.ok) return channel;
  const references = referencesAt(at.references, channel.value.seconds);
  if (!references.ok) return references;
  const compared = comparePoint(evidence, mounted, at, channel.value, references.value);
  if (!compared.ok) return compared;
  if (!stage.ok) return stage;
  const point = withUncertainty(evidence, mounted, at, stage.value, compared.value);
  if (!point.ok) return point;
  const digits = mounted.item.uncertaintyDigits ?? evidence.rounding.uncertaintyDigits;
  const printed = printPoint(point.value, digits);
  if (!printed.ok) return printed;
  return got({ ...point.value, printed: printed.value });
}

function withUncertainty(
  evidence: Evidence,
  mounted: Mounted<Sensor>,
  at: SetpointInWindow,
  stage: TemperatureStage,
  compared: ComparedPoint,
): EvidenceOutcome<Omit<MeasuredPoint, "printed">> {
  const budgeted = budgetPoint(evidence, mounted, at, stage, compared);
  if (!budgeted.ok) return budgeted;
  const { temperature, emf, shared, effects, coverageFactor, coverage } = budgeted.value;
  const { emfMicrovolt: _, atJunctionMicrovoltPerCelsius: __, ...point } = compared;
  const slope = point.seebeckMicrovoltPerCelsius;
  if (!(emf.combined > 0)) {
    return missing(mounted.itemPath, "Every contribution is zero: a result without uncertainty is none.");
  }
  const expandedMicrovolt = coverageFactor * emf.combined;
  const expandedCelsius = expandedMicrovolt / slope;
  const { nominalCelsius } = at.setpoint;
  const scopeHere = sensorScope(evidence.scope, mounted.item);
  const placed = pointScope(scopeHere, mounted.item.type, nominalCelsius, expandedCelsius);
  if (!placed.ok) return missing("scope", placed.problem.message);
  const scope = placed.value;
  const reported = reportedCelsius(scope, expandedCelsius);
  const conformity = assessConformity({
    sensor: mounted.item,
    nominalCelsius: at.setpoint.nominalCelsius,
    errorCelsius: point.errorCelsius,
    // U/k of the U that is printed: raised to the capability, it raises u with it, and no statement contradicts it.
    standardUncertaintyCelsius: (emf.combined / slope) * (reported / expandedCelsius),
    expandedCelsius: reported,
    degreesOfFreedom: emf.degreesOfFreedom,
    rule: mounted.item.decisionRule ?? evidence.decisionRule,
  });
  return got({
    state: "measured",
    sensor: mounted.item.id,
    setpoint: at.setpoint.id,
    type: mounted.item.type,
    nominalCelsius: at.setpoint.nominalCelsius,
    ...point,
    temperatureBudget: temperature,
    emfBudget: emf,
    shared,
    combinedMicrovolt: emf.combined,
    degreesOfFreedom: emf.degreesOfFreedom,
    coverageFactor,
    coverage,
    expandedMicrovolt,
    expandedCelsius,
    dominant: effects.reduce((a, b) => (Math.abs(b.effect) > Math.abs(a.effect) ? b : a)).key,
    conformity,
    scope,
  });
}
