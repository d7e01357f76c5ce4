import { awaitsReplacement } from "@/lib/data/amendment/load-replacing";
import { loadInDoubt } from "@/lib/data/equipment/in-doubt";
import { gatePassedAt } from "@/lib/data/gate/plan-digest";
import type { Tx } from "@/lib/data/in-scope";
import { loadOpenChanges } from "@/lib/data/order/change-store";
import { evaluationStanding } from "@/lib/data/run/evaluation-standing";
import { loadEvidence, type RunEvidence } from "@/lib/data/run/load-evidence";
import { snapshotDifferences } from "@/lib/domain/order/order-snapshot";
import { openSetpoints } from "@/lib/domain/run/open-setpoints";
import { setpointId } from "@/lib/domain/run/setpoint-id";
import { asRunState, isOpenForWork } from "@/lib/domain/run/states";
import { nextStep, runThread } from "@/lib/domain/run/thread";
import { assessTipCheck } from "@/lib/domain/run/tip-check";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { found } from "@/lib/views/view";

export const loadHead = async (tx: Tx, number: string, channels: readonly string[]): Promise<RunEvidence> =>
  found(await loadEvidence(tx, number, { channels }));

const openChange = (change: Awaited<ReturnType<typeof loadOpenChanges>>[number]) => ({
  changeId: change.changeId,
  orderNumber: change.orderNumber,
  sequence: change.sequence,
  reason: change.reason,
  at: change.changedAt.toISOString(),
  differences: snapshotDifferences(change.before, change.after),
});

/** What stands at the head of each page of a run. */
export const runHead = async (tx: Tx, actor: Actor, loaded: RunEvidence) => {
  const { run, standing, sensors } = loaded;
  const { standing: evaluation, last } = await evaluationStanding(tx, loaded);
  const blocks = await tx.scanBlock.count({ where: { runId: run.id } });
  const state = asRunState(run.state);
  const tipsPassed = run.places
    .filter(({ kind }) => kind !== "shorted")
    .every(
      ({ id }) =>
        assessTipCheck(standing.tips.find(({ loadPlaceId }) => loadPlaceId === id) ?? null) === "passed",
    );
  const open = openSetpoints(
    run.setpoints,
    sensors.map(({ id }) => id),
    standing.windows,
    standing.states,
  );
  const isReplacing = state === "signed-off" && (await awaitsReplacement(tx, run.id));
  const progress = {
    state,
    isReplacing,
    tipsPassed,
    gatePassed: (await gatePassedAt(tx, run)) !== null,
    hasReadings: blocks > 0,
    openSetpoints: open.length,
    evaluation,
  };
  const performer = await tx.person.findUnique({ where: { id: run.performerId }, select: { name: true } });
  const returned =
    state === "returned"
      ? await tx.reviewDecision.findFirst({
          where: { runId: run.id, decision: "returned" },
          orderBy: { id: "desc" },
        })
      : null;
  const mayPerform = actor.kind !== "system" && may(actor.roles, "run.perform");
  const mayWork = mayPerform && isOpenForWork(state);
  return {
    id: run.id,
    number: run.number,
    state,
    version: run.version,
    performer: performer?.name ?? "",
    createdAt: run.createdAt.toISOString(),
    startedAt: run.startedAt?.toISOString() ?? null,
    note: run.note,
    furnace: loaded.evidence.configuration.furnace,
    configuration: loaded.evidence.configuration.name,
    sensorCount: sensors.length,
    customers: [...new Set(sensors.map(({ line }) => line.order.customer.name))],
    setpoints: run.setpoints.map((setpoint) => ({
      id: setpointId(setpoint),
      position: setpoint.position,
      celsius: setpoint.celsius,
      isOpen: open.includes(setpoint),
    })),
    returnedBecause: returned?.reason ?? null,
    /** Out of service now, while the run is not signed off: what stands on it is in doubt. */
    inDoubt: state === "signed-off" ? [] : await loadInDoubt(tx, run),
    /** Changes of orders in the load that nobody has acknowledged: the run stands still until then. */
    orderChanges: !isOpenForWork(state) ? [] : (await loadOpenChanges(tx, run)).map(openChange),
    lastEvaluation: last?.sequence ?? null,
    thread: runThread(progress),
    next: nextStep(progress),
    progress,
    mayWork,
    /** Also of a run that is signed off, while a certificate of it is to be replaced. */
    mayEvaluate: mayWork || (mayPerform && isReplacing),
    mayExport: actor.kind !== "system" && may(actor.roles, "evidence.export"),
  };
};

export type RunHead = Awaited<ReturnType<typeof runHead>>;
