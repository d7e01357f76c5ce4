import { z } from "zod";
import { hex } from "@/lib/data/hex";
import { insertIntakeFile } from "@/lib/data/intake/insert-intake-file";
import { demandOrder } from "@/lib/data/order/demand-order";
import { sha256 } from "@/lib/data/sha256";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { listRefusal } from "@/lib/domain/intake/file-refusal";
import { groupByLine } from "@/lib/domain/intake/group-by-line";
import { Refused } from "@/lib/domain/refusal";
import { sensorEvents } from "@/lib/domain/sensor/events";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { requiredLine } from "@/lib/domain/typed-text";
import { readSensorFile } from "@/lib/files/sensor-list/read-sensor-file";
import { defineOperation } from "../operation";
import { type TakenIn, takeIn } from "./take-in";

const ReceiveFileInput = z.strictObject({
  orderNumber: z.string(),
  /** For rows that name no line; null = told by the file. */
  position: z.int().min(1).max(1000).nullable(),
  receivedOn: z.iso.date("Write the day as YYYY-MM-DD."),
  fileName: requiredLine("The file did not arrive.", 200),
  bytes: z.custom<Uint8Array>((value) => value instanceof Uint8Array, "The file did not arrive."),
});

/** A refusal about serials stands at the list they came from. */
const atTheFile = (error: unknown): never => {
  if (error instanceof Refused && error.refusal.fields?.serials)
    throw new Refused(listRefusal([error.refusal.fields.serials]));
  throw error;
};

/** Takes in the sensors of a list, CSV or XLSX, for as many lines of the order as it names; all of it, or none. The list is kept. */
export const receiveSensorFile = defineOperation({
  name: "sensor.receive-file",
  permission: "sensor.receive",
  input: ReceiveFileInput,
  perform: async ({ actor, now, tx }, input) => {
    const order = await demandOrder(tx, input.orderNumber);
    const read = readSensorFile(input.bytes, order.lines, input.position);
    if (!read.ok) throw new Refused(listRefusal(read.problems));
    const takenInById = personIdOf(actor);
    const taken: TakenIn[] = [];
    for (const { position, sensors } of groupByLine(read.sensors))
      taken.push(
        await takeIn(tx, {
          order,
          position,
          receivedOn: input.receivedOn,
          sensors,
          takenInById,
          now,
        }).catch(atTheFile),
      );
    await insertIntakeFile(tx, {
      orderId: order.id,
      customerId: order.customerId,
      fileName: input.fileName,
      bytes: input.bytes,
      rows: read.sensors.length,
      receivedById: takenInById,
      receivedAt: now,
    });
    const listRead: AuditEvent = eventOf(sensorEvents.listTakenIn, order.id, {
      orderNumber: order.number,
      sha256: hex(sha256(input.bytes)),
      format: read.format,
      sensors: read.sensors.length,
    });
    return {
      value: {
        orderNumber: order.number,
        tags: taken.flatMap(({ tags }) => tags),
        deviating: taken.flatMap(({ deviating }) => deviating),
      },
      events: [listRead, ...taken.flatMap(({ events }) => events)],
    };
  },
});
