import { runPage } from "@/lib/data/sql/run-page";
import { sensorCount } from "@/lib/data/sql/sensor-count";
import { stateCounts } from "@/lib/data/sql/state-counts";
import { cutPage, turnOf } from "@/lib/domain/list/page";
import { type RunQuery, runFilters, runStatesOf, shownRuns } from "@/lib/domain/run/list-query";
import { asRunState, runStates } from "@/lib/domain/run/states";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "@/lib/views/view";

/** One page of runs, the newest first; those that wait for the technician stand out by their state. */
export const runsView = (actor: Actor, query: RunQuery) =>
  answer(actor, "laboratory.read", async (tx) => {
    const turn = turnOf(query);
    const page = cutPage(await runPage(tx, query, turn), turn, ({ number }) => number);
    const rows = await tx.run.findMany({
      where: { id: { in: page.rows.map(({ id }) => id) } },
      include: { setpoints: { orderBy: { position: "asc" } }, places: { where: { kind: "sensor" } } },
    });
    const byId = new Map(rows.map((row) => [row.id, row]));
    const configurations = await tx.furnaceConfiguration.findMany({ include: { furnace: true } });
    const people = await tx.person.findMany({
      where: { id: { in: [...new Set(rows.map(({ performerId }) => performerId))] } },
      select: { id: true, name: true },
    });
    const counts = await stateCounts(tx, "run", runStates);
    return {
      // The day matters to late ones alone.
      waiting: await sensorCount(tx, { query: { only: "load" }, today: "" }),
      filter: shownRuns(query),
      isAny: [...counts.values()].some((count) => count > 0),
      filters: runFilters.map((name) => ({
        name,
        count: runStatesOf(name).reduce((sum, state) => sum + (counts.get(state) ?? 0), 0),
      })),
      furnace: configurations.find(({ furnaceId }) => furnaceId === query.furnace)?.furnace.tag ?? null,
      next: page.next,
      previous: page.previous,
      runs: page.rows.flatMap(({ id }) => {
        const run = byId.get(id);
        if (!run) return [];
        const configuration = configurations.find((one) => one.id === run.configurationId);
        return [
          {
            number: run.number,
            state: asRunState(run.state),
            furnace: configuration ? `${configuration.furnace.tag}, ${configuration.name}` : "",
            sensors: run.places.length,
            customers: new Set(run.places.map(({ customerId }) => customerId)).size,
            setpointsCelsius: run.setpoints.map(({ celsius }) => celsius),
            performer: people.find((one) => one.id === run.performerId)?.name ?? "",
            createdAt: run.createdAt.toISOString(),
            startedAt: run.startedAt?.toISOString() ?? null,
          },
        ];
      }),
    };
  });

export type RunsView = Awaited<ReturnType<typeof runsView>>;
