import { emfAtNominal } from "@/lib/metrology/comparison/emf-at-nominal";
import { emf } from "@/lib/metrology/thermocouple/emf";
import { coverageFactor } from "@/lib/metrology/uncertainty/coverage-factor";
import { assessConformity } from "./assess-conformity";
import type { Mounted, Sensor } from "./bench";
import { type ChannelInWindow, channelInWindow } from "./channel-window";
import { emfBudget, flattened } from "./emf-budget";
import type { MeasuredPoint } from "./evaluation";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import { printPoint } from "./print-point";
import { type ReferenceInWindow, type ReferencesAt, referencesAt } from "./reference-stage";
import type { Evidence } from "./schema";
import { sensitivityInUse } from "./sensitivity";
import { type ReferenceForBudget, temperatureBudget } from "./temperature-budget";

/** Further than this from the nominal, carrying the emf over by the Seebeck coefficient is refused. */
export const CARRY_LIMIT_CELSIUS = 5;

export type SetpointInWindow = {
  readonly setpoint: Evidence["setpoints"][number];
  readonly setpointPath: string;
  readonly window: Evidence["windows"][number];
  readonly windowPath: string;
  readonly references: readonly ReferenceInWindow[];
};

/** One sensor at one setpoint: comparison, both budgets, coverage, conformity, print. */
export function evaluatePoint(
  evidence: Evidence,
  mounted: Mounted<Sensor>,
  at: SetpointInWindow,
): EvidenceOutcome<MeasuredPoint> {
  const channel = channelInWindow(mounted, at.window, evidence.voltmeter.corrections);
  if (!channel.ok) return channel;
  const references = referencesAt(at.references, channel.value.seconds);
  if (!references.ok) return references;
  const compared = compare(evidence, mounted, at, channel.value, references.value);
  if (!compared.ok) return compared;
  const budgeted = withUncertainty(evidence, mounted, at, compared.value);
  if (!budgeted.ok) return budgeted;
  const printed = printPoint(
    budgeted.value,
    mounted.item.uncertaintyDigits ?? evidence.rounding.uncertaintyDigits,
  );
  if (!printed.ok) return printed;
  return got({ ...budgeted.value, printed: printed.value });
}

type Compared = Pick<
  MeasuredPoint,
  | "references"
  | "referenceCelsius"
  | "carriedCelsius"
  | "readings"
  | "indicatedMicrovolt"
  | "emfAtNominalMicrovolt"
  | "tableMicrovolt"
  | "deviationMicrovolt"
  | "errorCelsius"
  | "seebeckMicrovoltPerCelsius"
> & { readonly emfMicrovolt: number; readonly atJunctionMicrovoltPerCelsius: number };

function compare(
  evidence: Evidence,
  mounted: Mounted<Sensor>,
  at: SetpointInWindow,
  channel: ChannelInWindow,
  { references, celsius }: ReferencesAt,
): EvidenceOutcome<Compared> {
  const { nominalCelsius } = at.setpoint;
  const carriedCelsius = nominalCelsius - celsius;
  if (!(Math.abs(carriedCelsius) <= CARRY_LIMIT_CELSIUS)) {
    return missing(
      at.windowPath,
      `The references read ${celsius.toFixed(2)} °C in the window of setpoint ${at.setpoint.id}, nominal ${nominalCelsius} °C: more than ${CARRY_LIMIT_CELSIUS} °C is not carried over. Move the window, and check the channels of the references.`,
    );
  }
  const sensitivity = sensitivityInUse(evidence.sensitivities, mounted, nominalCelsius);
  if (!sensitivity.ok) return sensitivity;
  const table = emf(mounted.reference, nominalCelsius);
  if (!table.ok) return missing(`${at.setpointPath}.nominalCelsius`, table.problem.message);
  const { microvoltPerCelsius: slope, atJunctionMicrovoltPerCelsius } = sensitivity.value;
  const emfMicrovolt = channel.microvolt + channel.junctionMicrovolt;
  const emfAtNominalMicrovolt = emfAtNominal(emfMicrovolt, carriedCelsius, slope);
  const deviationMicrovolt = emfAtNominalMicrovolt - table.value;
  return got({
    references,
    referenceCelsius: celsius,
    carriedCelsius,
    readings: channel.readings,
    indicatedMicrovolt: channel.microvolt,
    emfMicrovolt,
    emfAtNominalMicrovolt,
    tableMicrovolt: table.value,
    deviationMicrovolt,
    errorCelsius: deviationMicrovolt / slope,
    seebeckMicrovoltPerCelsius: slope,
    atJunctionMicrovoltPerCelsius,
  });
}

function withUncertainty(
  evidence: Evidence,
  mounted: Mounted<Sensor>,
  at: SetpointInWindow,
  compared: Compared,
): EvidenceOutcome<Omit<MeasuredPoint, "printed">> {
  const { emfMicrovolt, atJunctionMicrovoltPerCelsius, ...point } = compared;
  const references = referencesForBudget(evidence, at, compared);
  if (!references.ok) return references;
  const slope = point.seebeckMicrovoltPerCelsius;
  const temperature = temperatureBudget(evidence, references.value, point.referenceCelsius);
  const sensor = {
    mounted,
    sensitivity: { microvoltPerCelsius: slope, atJunctionMicrovoltPerCelsius },
    indicatedMicrovolt: point.indicatedMicrovolt,
    emfMicrovolt,
    carriedCelsius: point.carriedCelsius,
  };
  const budget = emfBudget(evidence, sensor, temperature);
  const factor = coverageFactor(budget.degreesOfFreedom);
  if (!factor.ok) return missing(mounted.itemPath, factor.problem.message);
  const expandedMicrovolt = factor.value * budget.combined;
  const expandedCelsius = expandedMicrovolt / slope;
  if (!(budget.combined > 0)) {
    return missing(mounted.itemPath, "Every contribution is zero: a result without uncertainty is none.");
  }
  const effects = flattened(budget.contributions, temperature, slope);
  const conformity = assessConformity({
    sensor: mounted.item,
    nominalCelsius: at.setpoint.nominalCelsius,
    errorCelsius: point.errorCelsius,
    standardUncertaintyCelsius: budget.combined / slope,
    expandedCelsius,
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
    emfBudget: budget,
    combinedMicrovolt: budget.combined,
    degreesOfFreedom: budget.degreesOfFreedom,
    coverageFactor: factor.value,
    expandedMicrovolt,
    expandedCelsius,
    dominant: effects.reduce((a, b) => (Math.abs(b.effect) > Math.abs(a.effect) ? b : a)).key,
    conformity,
  });
}

function referencesForBudget(
  evidence: Evidence,
  at: SetpointInWindow,
  compared: Compared,
): EvidenceOutcome<ReferenceForBudget[]> {
  const all: ReferenceForBudget[] = [];
  for (const [i, { mounted, channel }] of at.references.entries()) {
    const evaluated = compared.references[i];
    if (!evaluated) continue;
    const sensitivity = sensitivityInUse(evidence.sensitivities, mounted, evaluated.celsius);
    if (!sensitivity.ok) return sensitivity;
    all.push({
      mounted,
      sensitivity: sensitivity.value,
      indicatedMicrovolt: channel.microvolt,
      emfMicrovolt: evaluated.emfMicrovolt,
    });
  }
  return got(all);
}
