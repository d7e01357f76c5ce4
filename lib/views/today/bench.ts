import type { Tx } from "@/lib/data/in-scope";
import { firstSensors } from "@/lib/data/sql/first-sensors";
import { gateProblems } from "@/lib/data/sql/gate-problems";
import { stateCounts } from "@/lib/data/sql/state-counts";
import { asRunState, type RunState, runStateLabels } from "@/lib/domain/run/states";
import { todayShown, type Waiting } from "./waiting";

export const sensorsToLoad = async (tx: Tx): Promise<Waiting> => ({
  count: (await stateCounts(tx, "sensor", ["received"])).get("received") ?? 0,
  items: (await firstSensors(tx, "received", todayShown)).map((sensor) => ({
    key: sensor.id,
    label: sensor.tag,
    detail: `type ${sensor.typeLetter}, ${sensor.serial}, order ${sensor.order}`,
    href: `/sensors/${sensor.tag}`,
  })),
});

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
export const hotRuns = (tx: Tx): Promise<Waiting> => runsIn(tx, ["measuring"], "/runs");
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
