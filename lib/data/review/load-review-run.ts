import type { EvidenceFinding } from "@/lib/domain/evidence/evaluation";
import { readStoredPoint } from "@/lib/domain/evidence/read-stored-point";
import { readStoredRows } from "@/lib/domain/gate/stored-outcome";
import { readEvidenceHead } from "@/lib/domain/review/evidence-head";
import { roomOf, roomRecordedAgain } from "@/lib/domain/run/room-of";
import { loadReplacing } from "../amendment/load-replacing";
import { disclaimersOf } from "../hold/disclaimers-of";
import type { Tx } from "../in-scope";
import { loadMark } from "../laboratory/load-mark";
import { opinionsOf } from "../opinion/opinion-store";
import { annealsOf } from "../parts/anneals-of";
import { certificatesOfSensors } from "../parts/certificates-of-sensors";
import { providersOf } from "../parts/providers-of";
import { loadPeopleNames } from "./load-people-names";
import { loadRunStandards } from "./load-run-standards";

const lastPer = <T>(rows: readonly T[], key: (row: T) => string): T[] => [
  ...new Map(rows.map((row) => [key(row), row])).values(),
];

const loadRun = (tx: Tx, runId: string) =>
  tx.run.findUnique({
    where: { id: runId },
    include: { setpoints: { orderBy: { position: "asc" } }, places: { orderBy: { place: "asc" } } },
  });

const loadEvaluation = async (tx: Tx, runId: string, id?: string) => {
  const row = await tx.evaluation.findFirst({
    where: { runId, ...(id ? { id } : {}) },
    orderBy: { sequence: "desc" },
    include: { results: true },
  });
  if (!row) return null;
  const { results, evidence, findings, ...rest } = row;
  return {
    ...rest,
    head: readEvidenceHead(evidence),
    findings: JSON.parse(findings) as EvidenceFinding[],
    results: results.map(({ point, ...result }) => ({
      ...result,
      point: readStoredPoint(point),
    })),
  };
};

const loadSensors = (tx: Tx, ids: readonly string[]) =>
  tx.sensor.findMany({
    where: { id: { in: [...ids] } },
    include: {
      intake: true,
      line: {
        include: {
          setpoints: { orderBy: { position: "asc" } },
          order: { include: { customer: true } },
        },
      },
    },
    orderBy: { tag: "asc" },
  });

/** Everything the review of a run rests on, but its readings; by its last evaluation, or the one named. Null: no such run. */
export const loadReviewRun = async (tx: Tx, runId: string, evaluationId?: string) => {
  const run = await loadRun(tx, runId);
  if (!run) return null;
  const { configurationId } = run;
  const configuration = await tx.furnaceConfiguration.findUniqueOrThrow({
    where: { id: configurationId },
    include: { furnace: true },
  });
  const evaluation = await loadEvaluation(tx, runId, evaluationId);
  const sensors = await loadSensors(
    tx,
    run.places.flatMap((place) => place.sensorId ?? []),
  );
  const disclaimers = await disclaimersOf(tx, sensors);
  const anneals = await annealsOf(
    tx,
    sensors.map(({ id }) => id),
  );
  const providers = await providersOf(tx, sensors);
  const opinions = await opinionsOf(tx, runId);
  const windows = await tx.stabilityWindow.findMany({ where: { runId }, orderBy: { id: "asc" } });
  const tipChecks = await tx.tipCheck.findMany({ where: { runId }, orderBy: { id: "asc" } });
  const blocks = await tx.scanBlock.findMany({
    where: { runId },
    orderBy: { sequence: "asc" },
    select: { sequence: true, source: true, fileName: true, receivedById: true, receivedAt: true },
  });
  const gate = await tx.gateOutcome.findFirst({
    where: { runId, verdict: "may-start" },
    orderBy: { id: "desc" },
  });
  const benchChecks = await tx.benchCheck.findMany({ where: { runId }, orderBy: { id: "asc" } });
  const decisions = await tx.reviewDecision.findMany({ where: { runId }, orderBy: { id: "asc" } });
  const certificates = await certificatesOfSensors(
    tx,
    sensors.map(({ id }) => id),
  );
  const replacing = evaluation ? await loadReplacing(tx, runId, evaluation.id) : [];
  const standards = await loadRunStandards(tx, run);
  const laboratory = await tx.laboratory.findFirstOrThrow();
  const accreditationMark = await loadMark(tx, laboratory.accreditationMarkId);
  const performerIds = [
    ...new Set([
      run.performerId,
      ...(evaluation ? [evaluation.evaluatedById] : []),
      ...blocks.map((block) => block.receivedById),
      ...windows.map((window) => window.acceptedById),
      ...tipChecks.map((check) => check.checkedById),
      ...benchChecks.map((check) => check.checkedById),
      ...(gate ? [gate.assessedById] : []),
    ]),
  ];
  const names = await loadPeopleNames(tx, [
    ...performerIds,
    ...decisions.map((decision) => decision.decidedById),
  ]);
  return {
    run,
    configuration,
    evaluation,
    sensors,
    disclaimers,
    anneals,
    providers,
    /** 7.8.7: those that stand, by sensor. */
    opinions,
    windows: lastPer(windows, (window) => window.setpointId),
    tipChecks: lastPer(tipChecks, (check) => check.loadPlaceId),
    blocks,
    /** The gate as it was passed; none for a run that began before runs had one. */
    gateRows: gate ? readStoredRows(gate.rows) : [],
    /** 7.8.4.1 b: the room at the start and the end, as far as it was recorded. */
    room: roomOf(benchChecks),
    roomAgain: roomRecordedAgain(benchChecks),
    decisions,
    certificates,
    /** Signed for, and reviewed once more: their certificates are to be replaced by what was evaluated since. */
    replacing,
    standards,
    laboratory,
    accreditationMark,
    performerIds,
    names,
  };
};

export type ReviewRun = NonNullable<Awaited<ReturnType<typeof loadReviewRun>>>;
export type ReviewSensor = ReviewRun["sensors"][number];
