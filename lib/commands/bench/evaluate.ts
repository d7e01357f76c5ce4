import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import { proposeWindows } from "@/lib/domain/evidence/propose-windows";
import { Evidence, type EvidenceInput } from "@/lib/domain/evidence/schema";
import { compare, type Figure } from "./measure";

/** A full run's evidence with the proposed windows accepted. */
export const withProposedWindows = (evidence: EvidenceInput): EvidenceInput => ({
  ...evidence,
  windows: proposeWindows(Evidence.parse(evidence)).flatMap(({ setpoint, proposal }) =>
    proposal.kind === "none"
      ? []
      : [{ setpoint, fromSeconds: proposal.window.fromSeconds, toSeconds: proposal.window.toSeconds }],
  ),
});

export const benchEvaluate = (evidence: EvidenceInput): Promise<Figure> => {
  const whole = withProposedWindows(evidence);
  const text = JSON.stringify(whole);
  return compare(
    {
      name: "Evaluation of a full run",
      ours: "evaluateEvidence: schema, checks, both budgets, every sensor and setpoint",
      baseline: "JSON.parse of the same evidence file",
    },
    () => {
      const outcome = evaluateEvidence(whole);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    },
    () => {
      JSON.parse(text);
    },
  );
};
