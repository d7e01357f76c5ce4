import type { Tx } from "@/lib/data/in-scope";
import { orderOf, orderParts } from "@/lib/data/order/order-of";
import { loadAddresses } from "@/lib/data/portal/address-store";
import { loadSerialNames } from "@/lib/data/portal/serial-names";
import { addressKindLabels } from "@/lib/domain/address/schema";
import type { Order } from "@/lib/domain/order/types";
import { draftOfUse } from "@/lib/domain/order/use-terms";
import { carriedText } from "@/lib/domain/request/carried-text";
import type { RequestedKind } from "@/lib/domain/request/schema";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { answer, found } from "../view";

/** More at once belong into an order of their own. */
const mostSensors = 200;

const kindOf = (line: Order["lines"][number], quantity: number): RequestedKind => {
  const { useFrom, useTo } = draftOfUse(line.useTerms, line.temperatureUnit);
  return {
    typeLetter: line.typeLetter,
    construction: line.construction,
    protection: line.protection,
    quantity: String(quantity),
    temperatureUnit: line.temperatureUnit,
    setpoints: line.setpoints.map(({ typed }) => typed).join("  "),
    ...{ useFrom, useTo },
    tolerance: line.tolerance,
    ownLimit: line.ownLimit ? String(line.ownLimit) : "",
    groupName: line.marks.groupName,
  };
};

/** Each sensor as it was ordered last, like ones together. Row-level security shows no other customer's. */
const askedAgain = async (tx: Tx, customerId: string, serials: readonly string[]) => {
  const wanted = [...new Set(serials)].slice(0, mostSensors);
  const names = await loadSerialNames(tx, customerId);
  const taken = await tx.sensor.findMany({
    where: { OR: [{ serial: { in: wanted } }, { id: { in: [...names.idsOf(wanted)] } }] },
    orderBy: { tag: "desc" },
    select: {
      id: true,
      serial: true,
      typeLetter: true,
      orderLineId: true,
      line: { select: { orderId: true } },
    },
  });
  const sensors = taken
    .map((sensor) => ({ ...sensor, serial: names.nameOf(sensor) }))
    .filter(({ serial }) => wanted.includes(serial));
  const last = new Map<string, (typeof sensors)[number]>();
  for (const sensor of sensors) {
    const key = `${sensor.typeLetter} ${sensor.serial}`;
    if (!last.has(key)) last.set(key, sensor);
  }
  const orderIds = [...new Set([...last.values()].map(({ line }) => line.orderId))];
  const rows = await tx.order.findMany({ where: { id: { in: orderIds } }, include: orderParts });
  const orders = rows.map((row) => orderOf(row));
  const known = [...last.values()].toSorted((a, b) => a.serial.localeCompare(b.serial, "en"));
  const quantityOf = (line: { readonly id: string }) =>
    known.filter(({ orderLineId }) => orderLineId === line.id).length;
  const lines = orders.flatMap((order) => order.lines).filter((line) => quantityOf(line) > 0);
  const kinds = lines.map((line) => kindOf(line, quantityOf(line)));
  // Of sensors from several orders nobody can say whose terms would hold.
  const [repeats = null] = orders.length === 1 ? orders : [];
  return { kinds, serials: known.map(({ serial }) => serial), repeats, lines };
};

/** A whole order once more, as it was ordered. */
const orderedAgain = async (tx: Tx, number: string) => {
  const row = found(await tx.order.findUnique({ where: { number }, include: orderParts }));
  const order = orderOf(row);
  const { lines } = order;
  return {
    // A request that nobody has looked at has agreed nothing.
    repeats: order.state === "requested" ? null : order,
    lines,
    kinds: lines.map((line) => kindOf(line, line.quantity)),
    serials: lines.flatMap((line) => line.sensors.map(({ serial }) => serial)),
  };
};

/** What the form for a request offers, and what it begins with where sensors, or an order, are to be done once more. */
export const requestFormView = (actor: Actor, serials: readonly string[], order?: string) =>
  answer(actor, "portal.order", async (tx) => {
    const customerId = customerIdOf(actor);
    const addresses = await loadAddresses(tx, customerId);
    const again =
      order !== undefined
        ? await orderedAgain(tx, order)
        : serials.length > 0
          ? await askedAgain(tx, customerId, serials)
          : { kinds: [], serials: [], repeats: null, lines: [] };
    return {
      /** What is carried over, without being asked for anew; null: new work. */
      carried: again.repeats && {
        number: again.repeats.number,
        ...carriedText(again.repeats, again.lines),
      },
      ruleSet: again.repeats?.ruleSet ?? ("none" as const),
      addresses: addresses
        .filter(({ active, kind }) => active && kind !== "invoice")
        .map(({ id, title, kind }) => ({ id, title: `${title} (${addressKindLabels[kind].toLowerCase()})` })),
      kinds: again.kinds,
      wishes: again.serials.length > 0 ? `Once more, please: ${again.serials.join(", ")}`.slice(0, 1800) : "",
    };
  });
