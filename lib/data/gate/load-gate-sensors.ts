import { TypeLetter } from "@/lib/domain/evidence/schema";
import type { GateSensor } from "@/lib/domain/gate/plan";
import { askedTolerance, readTolerance } from "@/lib/domain/order/asked-tolerance";
import type { Protection } from "@/lib/domain/run/load-candidates";
import { readBuild } from "@/lib/domain/sensor/build";
import type { Tx } from "../in-scope";
import { providersOf } from "../parts/providers-of";
import type { Run } from "../run/load-run";

const highest = (values: readonly (number | null | undefined)[]): number | null => {
  const known = values.flatMap((value) => (typeof value === "number" ? [value] : []));
  return known.length === 0 ? null : Math.max(...known);
};

/** What this sensor saw in our own furnaces before this run: hours here belong to its thermal history too. */
const seenHere = async (tx: Tx, sensor: { customerId: string; serial: string }, runId: string) => {
  const same = await tx.sensor.findMany({
    where: { customerId: sensor.customerId, serial: sensor.serial },
    select: { id: true },
  });
  const places = await tx.loadPlace.findMany({
    where: {
      sensorId: { in: same.map(({ id }) => id) },
      runId: { not: runId },
      run: { startedAt: { not: null } },
    },
    include: { run: { include: { setpoints: { select: { celsius: true } } } } },
  });
  return {
    celsius: highest(places.flatMap(({ run }) => run.setpoints.map(({ celsius }) => celsius))),
    millimetre: highest(places.map(({ immersionMillimetre }) => immersionMillimetre)),
  };
};

/** The sensors of a run in the order of their places, with what was ordered, how they are made and what they have seen. */
export const loadGateSensors = async (tx: Tx, run: Run): Promise<readonly GateSensor[]> => {
  const rows = await tx.sensor.findMany({
    where: { id: { in: run.places.flatMap(({ sensorId }) => sensorId ?? []) } },
    include: { line: { include: { setpoints: { orderBy: { celsius: "asc" } }, order: true } } },
  });
  const providers = await providersOf(tx, rows);
  const sensors: GateSensor[] = [];
  for (const row of run.places.flatMap(({ sensorId }) => rows.find(({ id }) => id === sensorId) ?? [])) {
    const { line } = row;
    const build = readBuild(row.build);
    const here = await seenHere(tx, row, run.id);
    sensors.push({
      tag: row.tag,
      type: TypeLetter.parse(row.typeLetter),
      protection: row.protection as Protection,
      orderNumber: line.order.number,
      orderState: line.order.state,
      providerName: providers.get(line.providerId ?? "") ?? null,
      orderedCelsius: line.setpoints.map(({ celsius }) => celsius),
      maximumCelsius: line.maximumCelsius,
      use:
        line.useFromCelsius === null || line.useToCelsius === null
          ? null
          : { fromCelsius: line.useFromCelsius, toCelsius: line.useToCelsius },
      largestIntervalCelsius: line.largestIntervalCelsius,
      intervalRule: line.intervalRule,
      tolerance: askedTolerance(readTolerance(line, line.temperatureUnit === "F" ? "F" : "C")),
      build,
      history: {
        highestCelsius: highest([build.highestUsedCelsius, here.celsius]),
        deepestMillimetre: highest([build.deepestUsedMillimetre, here.millimetre]),
      },
    });
  }
  return sensors;
};
