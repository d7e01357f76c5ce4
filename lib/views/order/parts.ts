import { handBacksOf } from "@/lib/data/hold/hand-backs-of";
import { holdsOf } from "@/lib/data/hold/holds-of";
import { inSnapshot, type Tx } from "@/lib/data/in-scope";
import { loadOrder } from "@/lib/data/order/load-order";
import { loadSensorFacts } from "@/lib/data/parts/load-sensor-facts";
import { setKindLabels } from "@/lib/domain/parts/decide-set";
import { plainPartLabels } from "@/lib/domain/parts/labels";
import { partsOf } from "@/lib/domain/parts/parts-of";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "../view";

const matrixOf = async (tx: Tx, number: string) => {
  const order = found(await loadOrder(tx, number));
  const held = await holdsOf(
    tx,
    order.lines.flatMap(({ sensors }) => sensors.map(({ id }) => id)),
  );
  const lines = await loadSensorFacts(tx, number, {
    ids: new Set(held.map(({ sensorId }) => sensorId)),
    handBacks: await handBacksOf(tx, order),
  });
  return lines
    .filter((line) => line.sensors.length > 0)
    .map((line) => ({
      position: line.position,
      setpoints: line.setpoints.map(({ typed }) => `${typed} ${line.unit}`),
      sensors: partsOf(line.sensors).map((sensor) => ({
        ...sensor,
        rows: sensor.rows.map((row) => ({
          ...row,
          label: sensor.rows.length > 1 ? setKindLabels[row.set] : "",
        })),
      })),
    }));
};

/** Where each sensor of an order stands at each ordered setpoint, and what comes next for it. */
export const orderPartsView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    found(await tx.order.findUnique({ where: { number }, select: { id: true } }));
    return matrixOf(tx, number);
  });

export type OrderParts = Awaited<ReturnType<typeof orderPartsView>>;

/** The same in the customer's words: no run, nothing of what the laboratory says to itself. */
export const customerPartsView = async (actor: Actor, number: string) => {
  await answer(actor, "portal.read", async (tx) =>
    found(await tx.order.findUnique({ where: { number }, select: { id: true } })),
  );
  // Reviews are the laboratory's; the order was seen to be the customer's own.
  const lines = await inSnapshot({ kind: "laboratory" }, (tx) => matrixOf(tx, number));
  return lines.map(({ position, setpoints, sensors }) => ({
    position,
    setpoints,
    sensors: sensors.map(({ tag, serial, rows }) => ({
      tag,
      serial,
      rows: rows.map(({ label, cells }) => ({
        label,
        cells: cells.map(({ state, certificate, by }) => ({
          state,
          label: by ? `Measured by ${by}` : plainPartLabels[state],
          certificate,
        })),
      })),
    })),
  }));
};
