import { correctedNames } from "@/lib/data/sql/corrected-words";
import { sensorPage } from "@/lib/data/sql/sensor-page";
import { stateCounts } from "@/lib/data/sql/state-counts";
import { isNarrowed } from "@/lib/domain/list/narrowed";
import { cutPage, turnOf } from "@/lib/domain/list/page";
import {
  type SensorFilter,
  type SensorQuery,
  sensorFilters,
  shownSensors,
} from "@/lib/domain/sensor/list-query";
import { type SensorState, sensorStates } from "@/lib/domain/sensor/transitions";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

const statesOf = (filter: SensorFilter): readonly SensorState[] => {
  if (filter === "here") return sensorStates.filter((state) => state !== "collected");
  return filter === "all" ? sensorStates : [filter];
};

const inOneRow = {
  select: { number: true, promisedOn: true, customer: { select: { id: true, name: true } } },
} as const;

/**
 * One page of the sensors in the laboratory, the last tag first. Counts stop where nobody reads on; of the states there
 * are none while a word or filter leaves something out that they would count.
 */
export const sensorsView = (actor: Actor, query: SensorQuery, today: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const asked = { query, today };
    const turn = turnOf(query);
    const found = await sensorPage(tx, asked, turn);
    const page = cutPage(found.rows, turn, ({ name }) => name);
    const rows = await tx.sensor.findMany({
      where: { id: { in: page.rows.map(({ id }) => id) } },
      include: { line: { select: { order: inOneRow } }, intake: { select: { receivedOn: true } } },
    });
    const byId = new Map(rows.map((row) => [row.id, row]));
    const counts = isNarrowed(query) ? null : await stateCounts(tx, "sensor", sensorStates);
    const corrected = await correctedNames(tx, [...byId.keys()]);
    const customer = query.customer
      ? await tx.customer.findUnique({ where: { id: query.customer }, select: { name: true } })
      : null;
    return {
      filter: shownSensors(query),
      customer: customer?.name ?? null,
      filters: sensorFilters.map((name) => ({
        name,
        count: counts && statesOf(name).reduce((sum, state) => sum + (counts.get(state) ?? 0), 0),
      })),
      count: found.count,
      next: page.next,
      previous: page.previous,
      sensors: page.rows.flatMap(({ id }) => {
        const row = byId.get(id);
        return row
          ? [
              {
                tag: row.tag,
                serial: row.serial,
                certifiedAs: corrected.get(id) ?? [],
                typeLetter: row.typeLetter,
                state: row.state,
                order: row.line.order.number,
                customer: row.line.order.customer.name,
                customerId: row.line.order.customer.id,
                receivedOn: row.intake?.receivedOn.toISOString().slice(0, 10) ?? "",
                promisedOn: row.line.order.promisedOn?.toISOString().slice(0, 10) ?? null,
              },
            ]
          : [];
      }),
    };
  });

export type SensorsView = Awaited<ReturnType<typeof sensorsView>>;
