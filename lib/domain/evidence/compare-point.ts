import { emfAtNominal } from "@/lib/metrology/comparison/emf-at-nominal";
import {
  NORMALISATION_LIMIT_CELSIUS,
  normaliseToNominal,
} from "@/lib/metrology/comparison/normalise-to-nominal";
import { emf } from "@/lib/metrology/thermocouple/emf";
import type { Mounted, Sensor } from "./bench";
import type { ChannelInWindow } from "./channel-window";
import type { MeasuredPoint } from "./evaluation";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import type { ReferencesAt } from "./reference-stage";
import type { Evidence } from "./schema";
import { sensitivityInUse } from "./sensitivity";
import type { SetpointInWindow } from "./setpoint-windows";

/** Further than this from the nominal, carrying the emf over by the Seebeck coefficient is refused. */
export const CARRY_LIMIT_CELSIUS = NORMALISATION_LIMIT_CELSIUS;

export type ComparedPoint = Pick<
  MeasuredPoint,
  | "references"
  | "referenceCelsius"
  | "carriedCelsius"
  | "readings"
  | "zeroMicrovolt"
  | "indicatedMicrovolt"
  | "emfAtNominalMicrovolt"
  | "tableMicrovolt"
  | "deviationMicrovolt"
  | "errorCelsius"
  | "seebeckMicrovoltPerCelsius"
> & { readonly emfMicrovolt: number; readonly atJunctionMicrovoltPerCelsius: number };

/**
 * The sensor against the references in one window: its emf with the junction at 0 °C and the cable's
 * correction, at the temperature of its own place, carried to the nominal.
 */
export function comparePoint(
  evidence: Evidence,
  mounted: Mounted<Sensor>,
  at: SetpointInWindow,
  channel: ChannelInWindow,
  { references, celsius: meanCelsius }: ReferencesAt,
): EvidenceOutcome<ComparedPoint> {
  const { nominalCelsius } = at.setpoint;
  const celsius = meanCelsius + (mounted.place.offsetCelsius ?? 0);
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
  const cable = mounted.item.cable?.correctionMicrovolt ?? 0;
  const emfMicrovolt = channel.microvolt + channel.junctionMicrovolt + cable;
  const curved = secondOrder(evidence, mounted, celsius, nominalCelsius);
  const emfAtNominalMicrovolt = emfAtNominal(emfMicrovolt, carriedCelsius, slope) + curved;
  const deviationMicrovolt = emfAtNominalMicrovolt - table.value;
  return got({
    references,
    referenceCelsius: celsius,
    carriedCelsius,
    readings: channel.readings,
    zeroMicrovolt: channel.zeroMicrovolt,
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

/** −½·S′·Δ², µV, where the evidence asks for the second term of the series; else 0. */
function secondOrder(
  evidence: Evidence,
  { reference }: Mounted<Sensor>,
  furnaceCelsius: number,
  nominalCelsius: number,
): number {
  if (evidence.comparison.carryOrder === 1) return 0;
  const limitCelsius = CARRY_LIMIT_CELSIUS;
  const carried = normaliseToNominal({
    reference,
    microvolt: 0,
    furnaceCelsius,
    nominalCelsius,
    limitCelsius,
  });
  return carried.ok ? carried.value.secondOrderMicrovolt : 0;
}
