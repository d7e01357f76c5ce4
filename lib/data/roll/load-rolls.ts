import type { RollPiece, RollsOfOrder } from "@/lib/domain/order/decide-roll-ends";
import type { Order } from "@/lib/domain/order/types";
import { readBuild } from "@/lib/domain/sensor/build";
import type { Tx } from "../in-scope";
import { loadOrder } from "../order/load-order";
import { certificatesOfSensors } from "../parts/certificates-of-sensors";

type Sensor = Order["lines"][number]["sensors"][number];

const standingOf = (
  { id, state, isReplaced }: Sensor,
  reported: ReadonlySet<string>,
): RollPiece["standing"] => {
  // Issued without a certificate of ours: its provider's report says it.
  if (reported.has(id) || state === "issued") return "reported";
  return isReplaced || state === "collected" ? "gone" : "here";
};

/** The pieces of an audited order with their rolls, and what was agreed on them; nothing is looked for under no rule set. */
export const loadRolls = async (
  tx: Tx,
  order: Pick<Order, "id" | "number" | "ruleSet" | "lines">,
): Promise<RollsOfOrder> => {
  const { number: orderNumber, ruleSet } = order;
  if (ruleSet === "none") return { orderNumber, ruleSet, pieces: [], agreements: [] };
  const sensors = order.lines.flatMap((line) =>
    line.sensors.map((sensor) => ({ ...sensor, providerId: line.marks.providerId })),
  );
  const ids = sensors.map(({ id }) => id);
  const reported = new Set((await certificatesOfSensors(tx, ids)).map(({ sensorId }) => sensorId));
  const rows = await tx.sensor.findMany({ where: { id: { in: ids } }, select: { id: true, build: true } });
  const builds = new Map(rows.map(({ id, build }) => [id, readBuild(build)]));
  return {
    orderNumber,
    ruleSet,
    pieces: sensors.map((sensor) => {
      const { lot, roll, end } = builds.get(sensor.id) ?? {};
      const standing = standingOf(sensor, reported);
      // Issued without a certificate of ours: a provider's counts, whoever the line goes to now.
      const isExternal =
        !reported.has(sensor.id) && (sensor.providerId !== null || sensor.state === "issued");
      return { sensorId: sensor.id, tag: sensor.tag, lot, roll, end, standing, isExternal };
    }),
    agreements: await tx.rollAgreement.findMany({
      where: { orderId: order.id },
      orderBy: [{ recordedAt: "asc" }, { id: "asc" }],
    }),
  };
};

/** The same by the order's number: of one with no rule set, nothing. */
export const loadRollsOf = async (
  tx: Tx,
  order: { readonly number: string; readonly ruleSet: string },
): Promise<RollsOfOrder> => {
  const whole = order.ruleSet === "none" ? null : await loadOrder(tx, order.number);
  return whole
    ? loadRolls(tx, whole)
    : { orderNumber: order.number, ruleSet: "none", pieces: [], agreements: [] };
};
