import { awayOf } from "@/lib/data/custody/away-of";
import { insertCustodyEvent } from "@/lib/data/custody/insert-custody-event";
import { holdsOf } from "@/lib/data/hold/holds-of";
import type { Tx } from "@/lib/data/in-scope";
import { loadLaboratory } from "@/lib/data/laboratory/laboratory-store";
import { orderRecipients, type Recipient } from "@/lib/data/mail/recipients";
import { writeEach } from "@/lib/data/mail/write-each";
import { nextNumber } from "@/lib/data/number/next-number";
import { completeFinishedOrder } from "@/lib/data/order/complete-finished-order";
import { loadOrder } from "@/lib/data/order/load-order";
import { insertOrderDocument } from "@/lib/data/quotation/order-document-store";
import { setSensorState } from "@/lib/data/sensor/set-state";
import {
  insertShipment,
  loadCertificateNumbers,
  loadShippingAddress,
} from "@/lib/data/shipment/shipment-store";
import { renderDeliveryNote } from "@/lib/documents/order/delivery-note";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { decideInHouse } from "@/lib/domain/custody/decide-in-house";
import { shippedLetter } from "@/lib/domain/mail/letters/shipped";
import { countedSensors } from "@/lib/domain/order/counted-sensors";
import type { Order } from "@/lib/domain/order/types";
import { demand, Refused } from "@/lib/domain/refusal";
import { sensorEvents } from "@/lib/domain/sensor/events";
import type { DeliveryNoteContent } from "@/lib/domain/shipment/content";
import { decideShipment, type Leaving } from "@/lib/domain/shipment/decide-shipment";
import { shipmentEvents } from "@/lib/domain/shipment/events";
import { ShipInput } from "@/lib/domain/shipment/schema";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation, type OperationContext } from "../operation";

const demandParcel = async (tx: Tx, input: ShipInput) => {
  const order = await loadOrder(tx, input.number);
  if (!order)
    throw new Refused({ code: "not-found", message: "This order is not here. Nothing was changed." });
  const address = await loadShippingAddress(tx, order.customerId, input.addressId);
  if (address === null)
    throw new Refused({
      code: "invalid",
      message: "This address is not one of the customer’s. Nothing was changed.",
      fields: { addressId: "Choose an address from the list." },
    });
  const sensors = order.lines.flatMap((line) => line.sensors);
  const ids = sensors.map(({ id }) => id);
  const holds = await holdsOf(tx, ids);
  const leaving = demand(decideShipment(sensors, input.tags, holds, input.reason, order.state));
  const away = await awayOf(tx, ids);
  demand(
    decideInHouse(
      leaving.flatMap(({ id, tag }) => (away.has(id) ? [{ tag, withWhom: away.get(id) ?? "" }] : [])),
    ),
  );
  const ordered = order.lines.reduce((sum, { quantity }) => sum + quantity, 0);
  const rest = sensors.filter(({ id }) => !leaving.some((one) => one.id === id));
  const here = rest.filter(({ state }) => state !== "collected").length;
  const counted = countedSensors(sensors).length;
  // An ended order takes nothing in any more.
  const toCome = order.state === "accepted" ? Math.max(0, ordered - counted) : 0;
  const awaited = Math.min(toCome, sensors.length - counted);
  const finished = rest.filter(({ state }) => state === "issued").length;
  return { order, address, leaving, finished, awaited, missing: toCome - awaited, remaining: here + toCome };
};
type Parcel = Awaited<ReturnType<typeof demandParcel>>;

/** The state first, under the sensors' locks: somebody at the desk may be handing one of them back. */
const moveSensors = async (tx: Tx, leaving: readonly Leaving[]): Promise<void> => {
  for (const from of new Set(leaving.map((sensor) => sensor.from)))
    await setSensorState(
      tx,
      leaving.filter((sensor) => sensor.from === from).map(({ id }) => id),
      [from],
      "collected",
    );
};

const noteOf = async (
  { tx, now }: OperationContext,
  { order, address, awaited, leaving, finished, missing, remaining }: Parcel,
  input: ShipInput,
  number: string,
): Promise<DeliveryNoteContent> => {
  const laboratory = await loadLaboratory(tx);
  const customer = await tx.customer.findUniqueOrThrow({ where: { id: order.customerId } });
  const certificates = await loadCertificateNumbers(
    tx,
    leaving.map(({ id }) => id),
  );
  const rows = order.lines.flatMap((line) =>
    line.sensors.map((sensor) => ({ ...sensor, ...{ type: line.typeLetter } })),
  );
  return {
    schema: 1,
    kind: "delivery-note",
    number,
    on: isoDay(now),
    laboratory: {
      name: laboratory?.name ?? "The laboratory",
      addressLines: (laboratory?.addressLines ?? "").split("\n").filter(Boolean),
      contact: laboratory?.contact ?? "",
      isDemo: laboratory?.isDemo ?? false,
    },
    customer: customer.name,
    address: address.split("\n").filter(Boolean),
    order: { number: order.number, purchaseOrder: order.purchaseOrder ?? "" },
    handedOver: input.handedOver,
    carrier: input.handedOver === "carrier" ? input.carrier : "",
    reference: input.reference,
    sensors: rows
      .filter(({ id }) => leaving.some((one) => one.id === id))
      .map(({ id, tag, serial, type }) => ({
        ...{ tag, serial, typeLetter: type },
        certificates: [...(certificates.get(id) ?? [])],
      })),
    reason: leaving.some(({ withoutCertificate }) => withoutCertificate) ? input.reason : "",
    remaining,
    finished,
    ...(awaited > 0 ? { awaited } : {}),
    ...(missing > 0 ? { missing } : {}),
  };
};

const tellCustomer = async (
  { tx, now }: OperationContext,
  order: Order,
  note: DeliveryNoteContent,
  publicUrl: string,
) => {
  const compose = ({ name }: Recipient) =>
    shippedLetter({
      contactName: name,
      laboratory: note.laboratory.name,
      orderNumber: order.number,
      shipmentNumber: note.number,
      sensors: note.sensors.length,
      unmeasured: note.sensors.filter(({ certificates }) => certificates.length === 0).length,
      carrier: note.carrier,
      reference: note.reference,
      rest: {
        ...{ remaining: note.remaining, finished: note.finished ?? 0 },
        ...{ awaited: note.awaited ?? 0, missing: note.missing ?? 0 },
      },
    });
  const recipients = await orderRecipients(tx, order.customerId, [order.number]);
  await writeEach(tx, recipients, "shipped", compose, publicUrl, now);
};

/** Sends sensors of an order back in one parcel: handed over, noted in the custody log, papered and told. */
export const ship = defineOperation({
  name: "shipment/ship",
  permission: "sensor.release",
  input: ShipInput,
  perform: async (context, input) => {
    const { actor, now, tx } = context;
    const parcel = await demandParcel(tx, input);
    const { order, leaving, remaining } = parcel;
    await moveSensors(tx, leaving);
    const completed = await completeFinishedOrder(tx, order.number);
    const year = now.getUTCFullYear();
    const number = `S-${year}-${String(await nextNumber(tx, `shipment-${year}`)).padStart(4, "0")}`;
    const note = await noteOf(context, parcel, input, number);
    const { handedOver, reference } = input;
    const { carrier } = note;
    const packedById = personIdOf(actor);
    const sensorIds = leaving.map(({ id }) => id);
    const shipmentId = await insertShipment(tx, {
      ...{ number, order, handedOver, carrier, reference, packedById, sensorIds },
      address: parcel.address,
      packedAt: now,
    });
    const custody = { sensorIds, shipmentId, recordedById: packedById, happenedAt: now };
    await insertCustodyEvent(tx, { ...custody, kind: "packed" });
    await insertCustodyEvent(tx, {
      ...custody,
      kind: "handed-over",
      toWhom: carrier || input.toWhom || note.customer,
    });
    const bytes = await renderDeliveryNote(note);
    const paper = { order, kind: "delivery-note", number, content: canonical(note), bytes } as const;
    await insertOrderDocument(tx, { ...paper, madeById: packedById, madeAt: now });
    await tellCustomer(context, order, note, input.publicUrl);
    const collected = leaving.map(({ id, tag, withoutCertificate }) =>
      eventOf(sensorEvents.collected, id, {
        ...{ tag, orderNumber: order.number, handedOver, withoutCertificate },
        reason: withoutCertificate ? input.reason : "",
      }),
    );
    const sent = eventOf(shipmentEvents.sent, order.id, {
      ...{ number, orderNumber: order.number, handedOver },
      sensors: leaving.length,
      isLast: remaining === 0,
    });
    return { value: { number, orderNumber: order.number }, events: [sent, ...collected, ...completed] };
  },
});
