import { type SensorState, sensorStates } from "@/lib/domain/sensor/transitions";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

/** here: all that have not been handed back. */
export const sensorFilters = ["here", ...sensorStates, "all"] as const;
export type SensorFilter = (typeof sensorFilters)[number];

const shown = 300;

const statesOf = (filter: SensorFilter): readonly SensorState[] => {
  if (filter === "here") return sensorStates.filter((state) => state !== "collected");
  return filter === "all" ? sensorStates : [filter];
};

const inOneRow = { select: { number: true, customer: { select: { name: true } } } } as const;

/** Sensors in the laboratory; `search` is part of a serial number or a tag. */
export const sensorsView = (actor: Actor, filter: SensorFilter, search: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const counted = await tx.sensor.groupBy({ by: ["state"], _count: true });
    const count = (wanted: SensorFilter): number =>
      counted
        .filter(({ state }) => statesOf(wanted).some((one) => one === state))
        .reduce((sum, { _count }) => sum + _count, 0);
    // The client passes % and _ on as wildcards.
    const contains = { contains: search.replace(/[\\%_]/g, "\\$&"), mode: "insensitive" } as const;
    const where = {
      state: { in: [...statesOf(filter)] },
      ...(search === "" ? {} : { OR: [{ serial: contains }, { tag: contains }] }),
    };
    const total = await tx.sensor.count({ where });
    const rows = await tx.sensor.findMany({
      where,
      orderBy: { tag: "desc" },
      take: shown,
      include: { line: { select: { order: inOneRow } }, intake: { select: { receivedOn: true } } },
    });
    return {
      filter,
      search,
      filters: sensorFilters.map((name) => ({ name, count: count(name) })),
      leftOut: total - rows.length,
      sensors: rows.map((row) => ({
        tag: row.tag,
        serial: row.serial,
        typeLetter: row.typeLetter,
        state: row.state,
        order: row.line.order.number,
        customer: row.line.order.customer.name,
        receivedOn: row.intake?.receivedOn.toISOString().slice(0, 10) ?? "",
      })),
    };
  });
