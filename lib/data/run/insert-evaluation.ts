import { canonical } from "@/lib/domain/audit/canonical";
import type { Evaluation } from "@/lib/domain/evidence/evaluation";
import { setpointId } from "@/lib/domain/run/setpoint-id";
import type { Tx } from "../in-scope";
import type { RunEvidence } from "./load-evidence";

type NewEvaluation = {
  readonly loaded: RunEvidence;
  readonly evaluation: Evaluation;
  readonly storedEvidence: string;
  readonly blocksDigest: Uint8Array<ArrayBuffer>;
  readonly inputsDigest: Uint8Array<ArrayBuffer>;
  readonly evaluatedById: string;
  readonly evaluatedAt: Date;
};

/** A new evaluation beside those there are; results of its points, one a sensor and setpoint. */
export const insertEvaluation = async (
  tx: Tx,
  given: NewEvaluation,
): Promise<{ id: string; sequence: number }> => {
  const { run, sensors } = given.loaded;
  const last = await tx.evaluation.aggregate({ where: { runId: run.id }, _max: { sequence: true } });
  const row = await tx.evaluation.create({
    data: {
      runId: run.id,
      sequence: (last._max.sequence ?? 0) + 1,
      engineVersion: given.evaluation.engineVersion,
      evidence: given.storedEvidence,
      blocksDigest: given.blocksDigest,
      inputsDigest: given.inputsDigest,
      findings: canonical(given.evaluation.findings),
      evaluatedById: given.evaluatedById,
      evaluatedAt: given.evaluatedAt,
    },
    select: { id: true, sequence: true },
  });
  const setpoints = new Map(run.setpoints.map((setpoint) => [setpointId(setpoint), setpoint.id]));
  await tx.result.createMany({
    data: given.evaluation.points.map((point) => {
      const sensor = sensors.find(({ tag }) => tag === point.sensor);
      const setpoint = setpoints.get(point.setpoint);
      if (!sensor || !setpoint)
        throw new Error(`${point.sensor} at ${point.setpoint} is not of run ${run.number}`);
      return {
        evaluationId: row.id,
        runId: run.id,
        sensorId: sensor.id,
        customerId: sensor.customerId,
        setpointId: setpoint,
        state: point.state,
        point: canonical(point),
      };
    }),
  });
  return row;
};
