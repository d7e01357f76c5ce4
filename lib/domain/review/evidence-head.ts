import { z } from "zod";
import {
  ConfigurationEvidence,
  DecisionRule,
  Evidence,
  JunctionEvidence,
  ReferenceEvidence,
  ScannerEvidence,
  SensorEvidence,
  VoltmeterEvidence,
} from "../evidence/schema";

const { shape } = SensorEvidence;

/** What the signatory and the certificate need of an evaluation's evidence; the readings are not in it. */
export const EvidenceHead = z.object({
  configuration: ConfigurationEvidence,
  references: z.array(ReferenceEvidence).min(1),
  voltmeter: VoltmeterEvidence,
  scanner: ScannerEvidence,
  junctions: z.array(JunctionEvidence).min(1),
  sensors: z
    .array(
      z.object({
        id: shape.id,
        decisionRule: shape.decisionRule,
        uncertaintyDigits: shape.uncertaintyDigits,
        deviationFunction: shape.deviationFunction,
        outsideScope: shape.outsideScope,
      }),
    )
    .default([]),
  setpoints: z.array(z.object({ id: z.string() })).default([]),
  windows: z.array(z.object({ setpoint: z.string() })).default([]),
  load: z
    .array(
      z.object({
        channel: z.string(),
        junction: z.string(),
        item: z.object({ kind: z.string(), id: z.string().optional() }),
      }),
    )
    .default([]),
  decisionRule: DecisionRule,
  scope: Evidence.shape.scope,
  rounding: z.object({ uncertaintyDigits: z.union([z.literal(1), z.literal(2)]) }),
});
export type EvidenceHead = z.infer<typeof EvidenceHead>;

/** The stored text was judged when it was written, so a misfit is a defect and throws. */
export const readEvidenceHead = (stored: string): EvidenceHead => EvidenceHead.parse(JSON.parse(stored));
