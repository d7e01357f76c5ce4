import type { CertificateContent, CertificateRow } from "@/lib/domain/certificate/content";
import type { EvidenceFile } from "@/lib/domain/certificate/evidence-file/evidence-file";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { EvaluatedPoint } from "@/lib/domain/evidence/evaluation";
import { Evidence } from "@/lib/domain/evidence/schema";
import { blocksOf } from "./heavy-blocks";
import { heaviestChannels, heavyRun, heavySeconds } from "./heavy-run";

const rowOf = (point: EvaluatedPoint): CertificateRow => {
  if (point.state !== "measured")
    throw new Error(`the bench's point at ${point.nominalCelsius} °C is measured`);
  const { degreesOfFreedom: _, ...printed } = point.printed;
  return {
    ...{ state: "measured", setpoint: `${point.nominalCelsius} °C`, ...printed, plot: null },
    conformity: { state: "no-statement", tolerance: "", probability: "" },
    remark: "",
  };
};

/** One certificate for all 40 sensors of the largest load, with the evidence that its figures came from. All invented. */
export const heavyCertificate = (
  bare: CertificateContent,
): { readonly content: CertificateContent; readonly evidence: EvidenceFile; readonly sensors: number } => {
  const evidence = Evidence.parse(heavyRun(heaviestChannels));
  const outcome = evaluateEvidence(evidence);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const tags = evidence.sensors.map(({ id }) => id);
  const { exception: _, ...computed } = bare.evidence;
  const sets = tags.map((tag) => ({
    ...{ kind: "as-received" as const, deviations: [], performedBy: bare.performedBy, evidence: computed },
    ...{ receivedOn: bare.receivedOn, performedFrom: bare.performedFrom, performedTo: bare.performedTo },
    ...{ run: bare.run, conditions: bare.conditions, standards: bare.standards },
    item: { ...bare.item, tag, serial: tag },
    rows: outcome.evaluation.points.filter(({ sensor }) => sensor === tag).map(rowOf),
  }));
  return {
    content: { ...bare, sets, rows: sets[0]?.rows ?? bare.rows, item: sets[0]?.item ?? bare.item },
    sensors: tags.length,
    evidence: {
      ...{ format: "emfolio-certificate-evidence", version: 1, certificate: bare.number },
      parts: [
        {
          items: tags.map((tag) => ({ tag, set: "as-received" as const })),
          ...{ run: bare.run.number, evaluation: computed.evaluation, engineVersion: computed.engineVersion },
          ...{ inputsDigest: computed.inputsDigest, evidence, ...blocksOf(evidence, heavySeconds) },
        },
      ],
    },
  };
};
