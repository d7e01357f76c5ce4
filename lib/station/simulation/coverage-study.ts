import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import type { EvidenceInput } from "@/lib/domain/evidence/schema";
import { matchedRun } from "./matched-run";

/** How often U held the truth, and how often it would have without the budget's largest term. */
export type CoverageStudy = {
  readonly furnaces: number;
  readonly within: number;
  readonly withinWithoutTerm: number;
  /** Share of u_c² of the term that was left out, the smallest over all furnaces. */
  readonly smallestShare: number;
  /** Mean of (error/u_c)²: 1 where the errors are as large as the budget says. */
  readonly meanSquareError: number;
};

const withoutTerm = (evidence: EvidenceInput): EvidenceInput => ({
  ...evidence,
  references: evidence.references.map((reference) => ({
    ...reference,
    calibrationUncertainty: { kind: "zero" as const, reason: "left out to see that its absence shows" },
  })),
});

const onlyPoint = (evidence: EvidenceInput): MeasuredPoint => {
  const outcome = evaluateEvidence(evidence);
  if (!outcome.ok) throw new Error(`${evidence.title}: ${JSON.stringify(outcome.problems)}`);
  const [point] = outcome.evaluation.points;
  if (point?.state !== "measured") throw new Error(`${evidence.title}: no measured point`);
  return point;
};

/**
 * One point from each of so many independent furnaces, through the evidence file: points of one run share the
 * references' error and would not be independent. The term left out is the references' certificates.
 */
export const studyCoverage = (furnaces: number, firstSeed = 1): CoverageStudy => {
  let within = 0;
  let withinWithoutTerm = 0;
  let smallestShare = 1;
  let squares = 0;
  for (let seed = firstSeed; seed < firstSeed + furnaces; seed += 1) {
    const { evidence, trueEmfMicrovolt } = matchedRun(seed);
    const point = onlyPoint(evidence);
    const reduced = onlyPoint(withoutTerm(evidence));
    const error = Math.abs(point.emfAtNominalMicrovolt - trueEmfMicrovolt);
    if (error <= point.expandedMicrovolt) within += 1;
    if (error <= reduced.expandedMicrovolt) withinWithoutTerm += 1;
    const left = reduced.combinedMicrovolt / point.combinedMicrovolt;
    smallestShare = Math.min(smallestShare, 1 - left * left);
    squares += (error / point.combinedMicrovolt) * (error / point.combinedMicrovolt);
  }
  return { furnaces, within, withinWithoutTerm, smallestShare, meanSquareError: squares / furnaces };
};
