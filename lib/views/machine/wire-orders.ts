import { inScope, type Tx } from "@/lib/data/in-scope";
import { certificatesOfSensors } from "@/lib/data/parts/certificates-of-sensors";
import { type Program, programScope } from "@/lib/domain/machine/program";
import type { WireOrder, WireOrderPage } from "@/lib/domain/machine/wire/order";
import type { OrderState } from "@/lib/domain/order/transitions";
import { isDone, type SensorState } from "@/lib/domain/sensor/transitions";

export const pageSize = 50;

const select = {
  id: true,
  number: true,
  state: true,
  purchaseOrder: true,
  recordedAt: true,
  promisedOn: true,
  lines: {
    orderBy: { position: "asc" },
    include: { setpoints: { orderBy: { position: "asc" } }, sensors: { orderBy: { tag: "asc" } } },
  },
} as const;

type Row = Awaited<ReturnType<typeof loadRows>>[number];

const loadRows = (
  tx: Tx,
  where: { readonly number: string | { readonly lt: string } } | undefined,
  take: number,
) => tx.order.findMany({ ...(where ? { where } : {}), select, orderBy: { number: "desc" }, take });

const summaryOf = (row: Row): WireOrderPage["orders"][number] => {
  const sensors = row.lines.flatMap((line) => line.sensors);
  return {
    number: row.number,
    state: row.state as OrderState,
    purchaseOrder: row.purchaseOrder ?? "",
    recordedAt: row.recordedAt.toISOString(),
    promisedOn: row.promisedOn?.toISOString().slice(0, 10) ?? null,
    quantity: row.lines.reduce((sum, line) => sum + line.quantity, 0),
    certified: sensors.filter((sensor) => isDone(sensor.state as SensorState)).length,
  };
};

/** A page of the orders a program may see; row-level security shows it no others. */
export const wireOrdersView = (program: Program, after: string | null): Promise<WireOrderPage> =>
  inScope(programScope(program), async (tx) => {
    const rows = await loadRows(tx, after === null ? undefined : { number: { lt: after } }, pageSize + 1);
    const orders = rows.slice(0, pageSize).map(summaryOf);
    return { orders, next: rows.length > pageSize ? (orders.at(-1)?.number ?? null) : null };
  });

/** One order, or null: not there, or not theirs. */
export const wireOrderView = (program: Program, number: string): Promise<WireOrder | null> =>
  inScope(programScope(program), async (tx) => {
    const [row] = await loadRows(tx, { number }, 1);
    if (!row) return null;
    const certificates = await certificatesOfSensors(
      tx,
      row.lines.flatMap(({ sensors }) => sensors.map(({ id }) => id)),
    );
    const lines = row.lines.map((line) => ({
      position: line.position,
      typeLetter: line.typeLetter,
      construction: line.construction,
      quantity: line.quantity,
      temperatureUnit: line.temperatureUnit as "C" | "F",
      setpoints: line.setpoints.map(({ typed }) => typed),
      sensors: line.sensors.map(({ id, tag, serial, state }) => ({
        tag,
        serial,
        state: state as SensorState,
        certificates: certificates.filter(({ sensorId }) => sensorId === id).map(({ number: own }) => own),
      })),
    }));
    return { ...summaryOf(row), lines };
  });
