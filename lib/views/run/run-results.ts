import { loadLastEvaluation } from "@/lib/data/run/load-last-evaluation";
import type { EvaluatedPoint, EvidenceFinding } from "@/lib/domain/evidence/evaluation";
import { readStoredPoint } from "@/lib/domain/evidence/read-stored-point";
import { describeEvidenceProblem } from "@/lib/domain/run/describe-problem";
import { assessTipCheck } from "@/lib/domain/run/tip-check";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "@/lib/views/view";
import { loadHead, runHead } from "./run-head";

/** The last evaluation, sensor by setpoint, findings first; and what is still in the way of the signatory. */
export const runResultsView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const loaded = await loadHead(tx, number, []);
    const { run, sensors, evidence, standing } = loaded;
    const head = await runHead(tx, actor, loaded);
    const last = await loadLastEvaluation(tx, run.id);
    const results = last ? await tx.result.findMany({ where: { evaluationId: last.id } }) : [];
    const evaluator = last
      ? await tx.person.findUnique({ where: { id: last.evaluatedById }, select: { name: true } })
      : null;
    const pointOf = (sensorId: string, setpointId: string): EvaluatedPoint | null => {
      const result = results.find((one) => one.sensorId === sensorId && one.setpointId === setpointId);
      return result ? readStoredPoint(result.point) : null;
    };
    return {
      head,
      evaluation: last && {
        id: last.id,
        sequence: last.sequence,
        engineVersion: last.engineVersion,
        inputsDigest: Buffer.from(last.inputsDigest).toString("hex"),
        evaluatedBy: evaluator?.name ?? "",
        evaluatedAt: last.evaluatedAt.toISOString(),
        findings: (JSON.parse(last.findings) as EvidenceFinding[]).map((finding) => ({
          code: finding.code,
          text: describeEvidenceProblem(evidence, finding),
        })),
      },
      sensors: sensors.map((sensor) => ({
        tag: sensor.tag,
        serial: sensor.serial,
        type: sensor.typeLetter,
        customer: sensor.line.order.customer.name,
        points: run.setpoints.map(({ id }) => pointOf(sensor.id, id)),
      })),
      missingTips: run.places
        .filter(({ kind }) => kind !== "shorted")
        .filter(
          ({ id }) =>
            assessTipCheck(standing.tips.find(({ loadPlaceId }) => loadPlaceId === id) ?? null) !== "passed",
        )
        .map(({ place }) => place),
    };
  });

export type RunResultsView = Awaited<ReturnType<typeof runResultsView>>;
