import type { Tx } from "@/lib/data/in-scope";
import { asRunState, runStateLabels } from "@/lib/domain/run/states";
import type { Waiting } from "./waiting";

const shown = 6;

export const sensorsToLoad = async (tx: Tx): Promise<Waiting> => {
  const where = { state: "received", line: { order: { state: "accepted" } } };
  const sensors = await tx.sensor.findMany({
    where,
    orderBy: { tag: "asc" },
    take: shown,
    include: { line: { select: { order: { select: { number: true } } } } },
  });
  return {
    count: await tx.sensor.count({ where }),
    items: sensors.map((sensor) => ({
      key: sensor.id,
      label: sensor.tag,
      detail: `type ${sensor.typeLetter}, ${sensor.serial}, order ${sensor.line.order.number}`,
      href: `/sensors/${sensor.tag}`,
    })),
  };
};

const runsIn = async (tx: Tx, states: readonly string[], page: string): Promise<Waiting> => {
  const where = { state: { in: [...states] } };
  const runs = await tx.run.findMany({
    where,
    orderBy: { createdAt: "asc" },
    take: shown,
    include: { places: { where: { kind: "sensor" }, select: { id: true } } },
  });
  const performers = await tx.person.findMany({
    where: { id: { in: runs.map((run) => run.performerId) } },
    select: { id: true, name: true },
  });
  return {
    count: await tx.run.count({ where }),
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
export const runsInProgress = (tx: Tx): Promise<Waiting> => runsIn(tx, ["planned", "measuring"], "/runs");
export const resultsToReview = (tx: Tx): Promise<Waiting> => runsIn(tx, ["submitted"], "/review");
