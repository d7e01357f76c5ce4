import { asRunState } from "@/lib/domain/run/states";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "@/lib/views/view";

/** All runs, the newest first; those that wait for the technician stand out by their state. */
export const runsView = (actor: Actor) =>
  answer(actor, "laboratory.read", async (tx) => {
    const rows = await tx.run.findMany({
      orderBy: [{ createdAt: "desc" }, { number: "desc" }],
      include: { setpoints: { orderBy: { position: "asc" } }, places: { where: { kind: "sensor" } } },
    });
    const configurations = await tx.furnaceConfiguration.findMany({ include: { furnace: true } });
    const people = await tx.person.findMany({ select: { id: true, name: true } });
    const waiting = await tx.sensor.count({
      where: { state: "received", line: { order: { state: "accepted" } } },
    });
    return {
      waiting,
      runs: rows.map((run) => {
        const configuration = configurations.find(({ id }) => id === run.configurationId);
        return {
          number: run.number,
          state: asRunState(run.state),
          furnace: configuration ? `${configuration.furnace.tag}, ${configuration.name}` : "",
          sensors: run.places.length,
          customers: new Set(run.places.map(({ customerId }) => customerId)).size,
          setpointsCelsius: run.setpoints.map(({ celsius }) => celsius),
          performer: people.find(({ id }) => id === run.performerId)?.name ?? "",
          createdAt: run.createdAt.toISOString(),
          startedAt: run.startedAt?.toISOString() ?? null,
        };
      }),
    };
  });

export type RunsView = Awaited<ReturnType<typeof runsView>>;
