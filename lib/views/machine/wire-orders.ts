import { inSnapshot, type Tx } from "@/lib/data/in-scope";
import { certificatesOfSensors } from "@/lib/data/parts/certificates-of-sensors";
import { noSensors, type OrderSensors, orderSensorStates } from "@/lib/data/sql/order-sensor-states";
import { type Program, programScope } from "@/lib/domain/machine/program";
import type { WireOrder, WireOrderPage } from "@/lib/domain/machine/wire/order";
import type { OrderState } from "@/lib/domain/order/transitions";
import type { SensorState } from "@/lib/domain/sensor/transitions";

export const pageSize = 50;

const summed = {
  id: true,
  number: true,
  state: true,
  purchaseOrder: true,
  recordedAt: true,
  promisedOn: true,
} as const;

/**
 * Rows of a page. A customer's program sees its customer's rows alone; they are named all the same, since by the policies
 * alone every row would be looked at.
 */
export const ofThese = ({ customerId }: Program, after: string | null) => ({
  ...(after === null ? {} : { number: { lt: after } }),
  ...(customerId === null ? {} : { customerId }),
});

const lines = {
  orderBy: { position: "asc" },
  include: { setpoints: { orderBy: { position: "asc" } }, sensors: { orderBy: { tag: "asc" } } },
} as const;

const loadPage = (tx: Tx, program: Program, after: string | null) =>
  tx.order.findMany({
    where: ofThese(program, after),
    select: summed,
    orderBy: { number: "desc" },
    take: pageSize + 1,
  });

type Summed = Awaited<ReturnType<typeof loadPage>>[number];

const summaryOf = (
  row: Summed,
  { quantity, certified }: OrderSensors = noSensors,
): WireOrderPage["orders"][number] => ({
  number: row.number,
  state: row.state as OrderState,
  purchaseOrder: row.purchaseOrder ?? "",
  recordedAt: row.recordedAt.toISOString(),
  promisedOn: row.promisedOn?.toISOString().slice(0, 10) ?? null,
  quantity,
  certified,
});

/** A page of the orders a program may see; row-level security shows it no others. */
export const wireOrdersView = (program: Program, after: string | null): Promise<WireOrderPage> =>
  inSnapshot(programScope(program), async (tx) => {
    const rows = await loadPage(tx, program, after);
    const shown = rows.slice(0, pageSize);
    const sensors = await orderSensorStates(
      tx,
      shown.map(({ id }) => id),
    );
    const orders = shown.map((row) => summaryOf(row, sensors.get(row.id)));
    return { orders, next: rows.length > pageSize ? (orders.at(-1)?.number ?? null) : null };
  });

/** One order, or null: not there, or not theirs. */
export const wireOrderView = (program: Program, number: string): Promise<WireOrder | null> =>
  inSnapshot(programScope(program), async (tx) => {
    const row = await tx.order.findUnique({ where: { number }, select: { ...summed, lines } });
    if (!row) return null;
    const sensors = await orderSensorStates(tx, [row.id]);
    const certificates = await certificatesOfSensors(
      tx,
      row.lines.flatMap(({ sensors }) => sensors.map(({ id }) => id)),
    );
    const told = row.lines.map((line) => ({
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
    return { ...summaryOf(row, sensors.get(row.id)), lines: told };
  });
