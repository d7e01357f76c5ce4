import type { Tx } from "@/lib/data/in-scope";
import { loadReports } from "@/lib/data/provider/report-store";
import { firstSensors } from "@/lib/data/sql/first-sensors";
import { furnaceWork } from "@/lib/data/sql/furnace-work";
import { gateProblems } from "@/lib/data/sql/gate-problems";
import { sensorCount } from "@/lib/data/sql/sensor-count";
import { stateCounts } from "@/lib/data/sql/state-counts";
import { asRunState, type RunState, runStateLabels } from "@/lib/domain/run/states";
import type { SensorQuery } from "@/lib/domain/sensor/list-query";
import { todayShown, type Waiting } from "./waiting";

const sensorsThat = async (
  tx: Tx,
  asked: { readonly query: SensorQuery; readonly today: string },
  at = "",
): Promise<Waiting> => ({
  count: await sensorCount(tx, asked),
  items: (await firstSensors(tx, asked, todayShown)).map((sensor) => ({
    key: sensor.id,
    label: sensor.tag,
    detail: `type ${sensor.typeLetter}, ${sensor.serial}, order ${sensor.order}`,
    href: `/sensors/${sensor.tag}${at}`,
  })),
});

/** What is on hold, goes back unmeasured or is of a cancelled order is not loaded, and not counted here. */
export const sensorsToLoad = (tx: Tx, today: string): Promise<Waiting> =>
  sensorsThat(tx, { query: { only: "load" }, today });

/** Subcontracted: sent there or still to be sent, until its certificate counts. */
export const sensorsForProviders = async (tx: Tx, today: string): Promise<Waiting> => {
  const waiting = await sensorsThat(tx, { query: { only: "provider" }, today }, "#provider");
  const reports = await loadReports(
    tx,
    waiting.items.map(({ key }) => key),
  );
  const isRejected = (id: string) =>
    reports.findLast(({ sensorId }) => sensorId === id)?.standing === "rejected";
  return {
    ...waiting,
    items: waiting.items.map((item) =>
      isRejected(item.key)
        ? { ...item, detail: `${item.detail}; its record was rejected, to be recorded again` }
        : item,
    ),
  };
};

/** Of all sensors, those handed back too: a correction may come later. */
export const providersToCheck = (tx: Tx, today: string): Promise<Waiting> =>
  sensorsThat(tx, { query: { show: "all", only: "provider-check" }, today }, "#provider");

const runsIn = async (tx: Tx, states: readonly RunState[], page: string): Promise<Waiting> => {
  const counts = await stateCounts(tx, "run", states);
  const runs = await tx.run.findMany({
    where: { state: { in: [...states] } },
    orderBy: { createdAt: "asc" },
    take: todayShown,
    include: { places: { where: { kind: "sensor" }, select: { id: true } } },
  });
  const performers = await tx.person.findMany({
    where: { id: { in: runs.map((run) => run.performerId) } },
    select: { id: true, name: true },
  });
  return {
    count: states.reduce((sum, state) => sum + (counts.get(state) ?? 0), 0),
    items: runs.map((run) => ({
      key: run.id,
      label: run.number,
      detail: `${runStateLabels[asRunState(run.state)].toLowerCase()}, ${run.places.length} sensor${
        run.places.length === 1 ? "" : "s"
      }, ${performers.find(({ id }) => id === run.performerId)?.name ?? "nobody on record"}`,
      href: `${page}/${run.number}`,
    })),
  };
};

export const returnedRuns = (tx: Tx): Promise<Waiting> => runsIn(tx, ["returned"], "/runs");
/** Runs and characterisations: a furnace is hot for either. */
export const hotFurnaces = async (tx: Tx): Promise<Waiting> => {
  const hot = (await furnaceWork(tx)).filter(({ isMeasuring }) => isMeasuring);
  return {
    count: new Set(hot.map(({ furnaceId }) => furnaceId)).size,
    items: hot.slice(0, todayShown).map(({ id, furnace, furnaceId, kind, number, sensors }) => ({
      ...{ key: id, label: number },
      detail: `${furnace}, ${kind === "run" ? `${sensors} sensor${sensors === 1 ? "" : "s"}` : "characterisation"}`,
      href: kind === "run" ? `/runs/${number}` : `/furnaces/${furnaceId}/characterisations/${id}`,
    })),
  };
};
export const plannedRuns = (tx: Tx): Promise<Waiting> => runsIn(tx, ["planned"], "/runs");
/** The longest planned first: what was submitted first is looked at first. */
export const resultsToReview = (tx: Tx): Promise<Waiting> => runsIn(tx, ["submitted"], "/review");

export const runsAtTheGate = async (tx: Tx): Promise<Waiting> => {
  const found = await gateProblems(tx, todayShown);
  return {
    count: found[0]?.count ?? 0,
    items: found.map(({ number, verdict }) => ({
      key: number,
      label: number,
      detail: verdict === "refused" ? "the gate refused its start" : "the gate asks for reasons",
      href: `/runs/${number}`,
      state: "exception",
    })),
  };
};
