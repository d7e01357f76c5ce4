import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { Evaluation, MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { buildEvidence, type Scene } from "./build-evidence";

export function evaluate(evidence: EvidenceInput): Evaluation {
  const outcome = evaluateEvidence(evidence);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.evaluation;
}

export function measured(evidence: EvidenceInput): MeasuredPoint[] {
  return evaluate(evidence).points.map((point) => {
    if (point.state !== "measured") throw new Error(point.reason);
    return point;
  });
}

export const measure = (scene: Scene): MeasuredPoint[] => measured(buildEvidence(scene));
