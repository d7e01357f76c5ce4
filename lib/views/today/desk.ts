import type { Tx } from "@/lib/data/in-scope";
import type { Waiting } from "./waiting";

const shown = 6;
const word = (count: number, one: string): string => `${count} ${one}${count === 1 ? "" : "s"}`;

export const ordersToAccept = async (tx: Tx): Promise<Waiting> => {
  const where = { state: "recorded" };
  const orders = await tx.order.findMany({
    where,
    orderBy: { recordedAt: "asc" },
    take: shown,
    include: { customer: { select: { name: true } }, lines: { select: { quantity: true } } },
  });
  return {
    count: await tx.order.count({ where }),
    items: orders.map((order) => ({
      key: order.id,
      label: order.number,
      detail: `${order.customer.name}, ${word(
        order.lines.reduce((sum, line) => sum + line.quantity, 0),
        "sensor",
      )}`,
      href: `/orders/${order.number}`,
    })),
  };
};

/** Accepted orders of which sensors are still to come. */
export const ordersToReceive = async (tx: Tx): Promise<Waiting> => {
  const orders = await tx.order.findMany({
    where: { state: "accepted" },
    orderBy: { acceptedAt: "asc" },
    include: {
      customer: { select: { name: true } },
      lines: { select: { quantity: true, _count: { select: { sensors: true } } } },
    },
  });
  const open = orders.flatMap((order) => {
    const missing = order.lines.reduce(
      (sum, line) => sum + Math.max(0, line.quantity - line._count.sensors),
      0,
    );
    return missing > 0 ? [{ order, missing }] : [];
  });
  return {
    count: open.reduce((sum, { missing }) => sum + missing, 0),
    items: open.slice(0, shown).map(({ order, missing }) => ({
      key: order.id,
      label: order.number,
      detail: `${order.customer.name}, ${word(missing, "sensor")} to come`,
      href: `/orders/${order.number}`,
    })),
  };
};

export const sensorsToHandBack = async (tx: Tx): Promise<Waiting> => {
  const where = { state: "issued" };
  const sensors = await tx.sensor.findMany({
    where,
    orderBy: { tag: "asc" },
    take: shown,
    include: { line: { select: { order: { select: { customer: { select: { name: true } } } } } } },
  });
  return {
    count: await tx.sensor.count({ where }),
    items: sensors.map((sensor) => ({
      key: sensor.id,
      label: sensor.tag,
      detail: `type ${sensor.typeLetter}, ${sensor.serial}, ${sensor.line.order.customer.name}`,
      href: `/sensors/${sensor.tag}`,
    })),
  };
};
