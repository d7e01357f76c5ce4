import { blocksBehindDigest } from "@/lib/data/evidence/blocks-digest";
import { loadReadings } from "@/lib/data/evidence/read-scan-channels";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { inputsDigest } from "@/lib/data/run/inputs-digest";
import { canonical } from "@/lib/domain/audit/canonical";
import { sameBytes } from "@/lib/domain/audit/chain";
import type { EvaluatedPoint } from "@/lib/domain/evidence/evaluation";
import { engineVersion } from "@/lib/metrology/engine-version";
import { evaluationFact } from "./facts";
import { type Makers, makers } from "./makers";
import { Broken, counted, type Facts, laboratory } from "./step";

const loadEvaluation = (id: string) =>
  inScope(laboratory, async (tx) => {
    const evaluation = await tx.evaluation.findUniqueOrThrow({ where: { id }, include: { results: true } });
    const sensors = await tx.sensor.findMany({
      where: { id: { in: evaluation.results.map(({ sensorId }) => sensorId) } },
      select: { id: true, tag: true, customerId: true },
    });
    const blocks = await blocksBehindDigest(tx, evaluation.runId, evaluation.blocksDigest);
    const readings =
      blocks === undefined ? undefined : await loadReadings(tx, evaluation.runId, { upToSequence: blocks });
    return { ...evaluation, sensors: new Map(sensors.map((sensor) => [sensor.id, sensor])), readings };
  });

type StoredEvaluation = Awaited<ReturnType<typeof loadEvaluation>>;

const demandPoints = (
  record: string,
  { results, sensors }: StoredEvaluation,
  points: readonly EvaluatedPoint[],
): void => {
  const wanted = new Map(points.map((point) => [`${point.sensor} at ${point.setpoint}`, point]));
  for (const row of results) {
    const stored = JSON.parse(row.point) as EvaluatedPoint;
    const name = `${stored.sensor} at ${stored.setpoint}`;
    const point = wanted.get(name);
    const sensor = sensors.get(row.sensorId);
    if (!point) throw new Broken(`${record}, ${name}`, "the evidence gives no such result");
    if (canonical(point) !== row.point)
      throw new Broken(`${record}, ${name}`, "recomputed from the readings, the result is another");
    if (row.state !== point.state || sensor?.tag !== point.sensor || sensor.customerId !== row.customerId)
      throw new Broken(`${record}, ${name}`, "the result is filed under another sensor, customer or state");
    wanted.delete(name);
  }
  for (const name of wanted.keys()) throw new Broken(`${record}, ${name}`, "the result is missing");
};

const recompute = async (
  record: string,
  stored: StoredEvaluation,
  { evaluate }: Makers,
): Promise<boolean> => {
  if (!stored.readings) throw new Broken(record, "the blocks it was computed from are not those stored");
  if (!sameBytes(inputsDigest(stored.evidence, stored.blocksDigest), stored.inputsDigest))
    throw new Broken(record, "its evidence is not what it was computed from");
  // Another engine may differ in any digit; that it was another, the log confirms.
  if (stored.engineVersion !== engineVersion) return false;
  const outcome = await evaluate(stored.evidence, [...stored.readings]);
  if (!outcome.ok) {
    const [problem] = outcome.problems;
    throw new Broken(record, `its evidence cannot be evaluated: ${problem?.path} ${problem?.message}`);
  }
  if (canonical(outcome.evaluation.findings) !== stored.findings)
    throw new Broken(record, "recomputed, its findings are others");
  demandPoints(record, stored, outcome.evaluation.points);
  return true;
};

/** Computes every result anew, from the stored readings and evidence, and compares to the last digit. */
export const rederiveResults = async (facts: Facts, tools: Makers = makers): Promise<string> => {
  const evaluations = await inScope(laboratory, (tx) =>
    tx.evaluation.findMany({
      select: { id: true, runId: true, sequence: true },
      orderBy: [{ runId: "asc" }, { sequence: "asc" }],
    }),
  );
  let results = 0;
  let otherEngine = 0;
  for (const { id, runId, sequence } of evaluations) {
    const stored = await loadEvaluation(id);
    if (await recompute(`evaluation ${sequence} of run ${runId}`, stored, tools))
      results += stored.results.length;
    else otherEngine += 1;
    facts.set(...evaluationFact(runId, sequence, hex(stored.inputsDigest), stored.engineVersion));
  }
  const skipped =
    otherEngine === 0
      ? ""
      : `; ${counted(otherEngine, "evaluation")} by another engine than ${engineVersion}: not recomputed`;
  return `${counted(results, "result")} of ${counted(evaluations.length - otherEngine, "evaluation")} recomputed${skipped}`;
};
