import { blocksDigest } from "@/lib/data/evidence/blocks-digest";
import { demandUndisturbed } from "@/lib/data/order/demand-undisturbed";
import { sensorsGone } from "@/lib/data/parts/sensors-gone";
import { drawSample } from "@/lib/data/review/draw-sample";
import { demandEvaluable } from "@/lib/data/run/demand-evaluable";
import { demandRun } from "@/lib/data/run/demand-run";
import { inputsDigest } from "@/lib/data/run/inputs-digest";
import { insertEvaluation } from "@/lib/data/run/insert-evaluation";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { eventOf } from "@/lib/domain/audit/define-event";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { Evaluation } from "@/lib/domain/evidence/evaluation";
import type { Evidence } from "@/lib/domain/evidence/schema";
import { Refused } from "@/lib/domain/refusal";
import { describeEvidenceProblem } from "@/lib/domain/run/describe-problem";
import { runEvents } from "@/lib/domain/run/events";
import { EvaluateRunInput } from "@/lib/domain/run/schema";
import { storedEvidence } from "@/lib/domain/run/stored-evidence";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

const shown = 8;

const demandEvaluation = (evidence: Evidence): Evaluation => {
  const outcome = evaluateEvidence(evidence);
  if (outcome.ok) return outcome.evaluation;
  const said = outcome.problems.map((problem) => describeEvidenceProblem(evidence, problem));
  const more = said.length > shown ? ` And ${said.length - shown} more.` : "";
  throw new Refused({
    code: "rule",
    message: `The run cannot be evaluated as it stands. ${said.slice(0, shown).join(" ")}${more} Nothing was stored.`,
  });
};

/** Evaluates a run as it stands. Earlier evaluations and their results stay beside the new one. */
export const evaluateRun = defineOperation({
  name: "run/evaluate",
  permission: "run.perform",
  input: EvaluateRunInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    await demandEvaluable(tx, run);
    await demandUndisturbed(tx, run);
    const loaded = await loadEvidence(tx, run.number);
    if (!loaded || loaded.evidence.windows.length === 0)
      throw new Refused({
        code: "rule",
        message: "Accept a stability window at one setpoint at least, then evaluate.",
      });
    const evaluation = demandEvaluation(loaded.evidence);
    const text = storedEvidence(loaded.evidence);
    const digest = await blocksDigest(tx, run.id);
    const inputs = inputsDigest(text, digest);
    const stored = await insertEvaluation(tx, {
      loaded,
      evaluation,
      storedEvidence: text,
      blocksDigest: digest,
      inputsDigest: inputs,
      evaluatedById: personIdOf(actor),
      evaluatedAt: now,
    });
    // What is signed off in a returned run stays so.
    const gone = await sensorsGone(tx, run.id);
    const open = loaded.sensors.filter(
      ({ id, state }) => !gone.has(id) && (state === "measured" || state === "evaluated"),
    );
    if (open.length > 0)
      await setSensorState(
        tx,
        open.map(({ id }) => id),
        ["measured", "evaluated"],
        "evaluated",
      );
    // Signed off, it is handed over by its evaluation: which of the new results are looked at is drawn now.
    const drawn = run.state === "signed-off" ? await drawSample(tx, run, stored, now) : [];
    return {
      value: { sequence: stored.sequence, evaluation },
      events: [
        eventOf(runEvents.evaluated, run.id, {
          run: run.number,
          evaluation: stored.sequence,
          engineVersion: evaluation.engineVersion,
          inputsDigest: Buffer.from(inputs).toString("hex"),
          results: evaluation.points.length,
          findings: evaluation.findings.length,
        }),
        ...drawn,
      ],
    };
  },
});
