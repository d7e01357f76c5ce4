import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { Evaluation } from "@/lib/domain/evidence/evaluation";
import { heavyChannels, heavyRun, heavySeconds, heavySetpoints } from "./heavy-run";
import { compare, type Figure } from "./measure";

const WARM_UP_ROUNDS = 15;

const evaluated = (evidence: unknown): Evaluation => {
  const outcome = evaluateEvidence(evidence);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.evaluation;
};

/** Lines of both budgets of a point: each is worth one bare pass over the readings. */
const contributionsOf = ({ points }: Evaluation): number => {
  const [point] = points;
  if (point?.state !== "measured") throw new Error("the bench's first point is measured");
  return point.temperatureBudget.contributions.length + point.emfBudget.contributions.length;
};

/** A large load evaluated whole, against one bare pass over its readings for each contribution of the budget. */
export const benchHeavyEvaluation = (): Promise<Figure> => {
  const evidence = heavyRun();
  const contributions = contributionsOf(evaluated(evidence));
  // A server that evaluates runs all day has compiled this code: so has the bench, before it looks at the clock.
  for (let round = 0; round < WARM_UP_ROUNDS; round += 1) evaluated(evidence);
  const minutes = heavySeconds / 60;
  let kept = 0;
  return compare(
    {
      name: `Evaluation of ${heavyChannels} channels × ${heavySetpoints.length} setpoints × ${minutes} min of 1 s scans`,
      ours: "evaluateEvidence: schema, checks, both budgets, every sensor and setpoint, findings",
      baseline: `${contributions} bare passes that add up every reading: one for each contribution`,
    },
    () => {
      evaluated(evidence);
    },
    () => {
      for (let pass = 0; pass < contributions; pass += 1) {
        for (const { microvolts } of evidence.scans.channels) {
          let total = 0;
          for (let i = 0; i < microvolts.length; i += 1) total += microvolts[i] as number;
          kept += total;
        }
      }
      if (!Number.isFinite(kept)) throw new Error("a reading is no number");
    },
  );
};
