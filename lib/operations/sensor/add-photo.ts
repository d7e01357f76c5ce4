import { z } from "zod";
import { hex } from "@/lib/data/hex";
import { countPhotos, insertPhoto } from "@/lib/data/intake/photo-store";
import { sha256 } from "@/lib/data/sha256";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { sensorEvents } from "@/lib/domain/sensor/events";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { optionalLine } from "@/lib/domain/typed-text";
import { readPhoto } from "@/lib/files/image/read-photo";
import { defineOperation } from "../operation";

const mostPhotos = 30;

const refused = (message: string) =>
  new Refused({ code: "invalid", message: "The photo was not kept.", fields: { photo: message } });

/** A photo of a sensor as it is, for its record; what the camera wrote beside the picture is not kept. */
export const addPhoto = defineOperation({
  name: "sensor.add-photo",
  permission: "sensor.receive",
  input: z.strictObject({
    tag: z.string(),
    caption: optionalLine(200),
    bytes: z.custom<Uint8Array>((value) => value instanceof Uint8Array, "The photo did not arrive."),
  }),
  perform: async ({ actor, now, tx }, { tag, caption, bytes }) => {
    const sensor = await tx.sensor.findUnique({ where: { tag }, select: { id: true, customerId: true } });
    if (!sensor) throw new Refused({ code: "not-found", message: `There is no sensor ${tag}.` });
    const read = readPhoto(bytes);
    if (!read.ok) throw refused(read.message);
    if ((await countPhotos(tx, sensor.id)) >= mostPhotos)
      throw refused(`This sensor has ${mostPhotos} photos; no more are kept.`);
    const { photo } = read;
    const { id } = await insertPhoto(tx, {
      sensorId: sensor.id,
      customerId: sensor.customerId,
      ...photo,
      caption,
      takenById: personIdOf(actor),
      takenAt: now,
    });
    const { width, height } = photo;
    return {
      value: { id, tag },
      events: [
        eventOf(sensorEvents.photoAdded, sensor.id, {
          tag,
          sha256: hex(sha256(photo.bytes)),
          width,
          height,
        }),
      ],
    };
  },
});
