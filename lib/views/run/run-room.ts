import { outsideLimits, readRoomFigures } from "@/lib/domain/run/room-figures";
import { roomKind } from "@/lib/domain/run/room-of";
import { asRunState, isOpenForWork } from "@/lib/domain/run/states";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "@/lib/views/view";

/** The room of a run as recorded, the latest first, and what it can be told by. */
export const runRoomView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const run = found(
      await tx.run.findUnique({
        where: { number },
        select: { id: true, state: true, startedAt: true, ambientId: true },
      }),
    );
    const rows = await tx.benchCheck.findMany({
      where: { runId: run.id, kind: roomKind },
      orderBy: { id: "desc" },
    });
    const people = await tx.person.findMany({
      where: { id: { in: rows.map(({ checkedById }) => checkedById) } },
      select: { id: true, name: true },
    });
    const instruments = await tx.equipment.findMany({
      where: { kind: "ambient", state: "in-service" },
      orderBy: { tag: "asc" },
      select: { id: true, tag: true, model: true },
    });
    const mayPerform = actor.kind !== "system" && may(actor.roles, "run.perform");
    return {
      number,
      mayRecord: mayPerform && isOpenForWork(asRunState(run.state)),
      hasBegun: run.startedAt !== null,
      instruments: instruments.map(({ id, tag, model }) => ({
        ...{ tag, label: `${tag} ${model}`.trim(), isChosen: id === run.ambientId },
      })),
      records: rows.map(({ channel, checkedAt, checkedById, figures, id }, at) => {
        const told = readRoomFigures(figures);
        return {
          ...{ key: String(id), moment: channel as "start" | "end", instrument: told.instrument },
          celsius: `${told.celsius} °C`,
          expandedCelsius: `${told.expandedCelsius} °C`,
          humidity: told.humidity ? `${told.humidity.percent} %` : "",
          /** A later record of the same moment counts instead. */
          isCounted: !rows.slice(0, at).some((later) => later.channel === channel),
          outside: outsideLimits(told),
          reason: told.reason ?? "",
          limitsFrom: told.limits?.source ?? "",
          at: checkedAt.toISOString(),
          by: people.find((person) => person.id === checkedById)?.name ?? "",
        };
      }),
    };
  });

export type RunRoomView = Awaited<ReturnType<typeof runRoomView>>;
