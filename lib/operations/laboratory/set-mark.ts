import { z } from "zod";
import { keepDocument } from "@/lib/data/evidence/keep-document";
import { hex } from "@/lib/data/hex";
import { saveMark } from "@/lib/data/laboratory/laboratory-store";
import { sha256 } from "@/lib/data/sha256";
import { canPrintMark } from "@/lib/documents/certificate/try-mark";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { rowVersion } from "@/lib/domain/typed-text";
import { type MarkImage, readMark } from "@/lib/files/image/read-mark";
import { defineOperation } from "../operation";

const refused = (message: string) =>
  new Refused({ code: "invalid", message: "The mark was not taken in.", fields: { mark: message } });

const demandImage = async (bytes: Uint8Array): Promise<MarkImage> => {
  const read = readMark(bytes);
  if (!read.ok) throw refused(read.message);
  if (!(await canPrintMark(bytes, read.image.mediaType)))
    throw refused("The image cannot be printed. Save it anew, as a plain PNG.");
  return read.image;
};

/** The accreditation mark as the body gave it, kept by its hash; none takes it off. Certificates signed already keep theirs. */
export const setMark = defineOperation({
  name: "laboratory/set-mark",
  permission: "laboratory.configure",
  input: z.strictObject({
    version: rowVersion,
    mark: z
      .strictObject({
        bytes: z.custom<Uint8Array>((value) => value instanceof Uint8Array, "The file did not arrive."),
        fileName: z.string().max(200),
      })
      .nullable(),
  }),
  perform: async ({ actor, now, tx }, { version, mark }) => {
    if (mark === null) {
      await saveMark(tx, version, null);
      return { value: null, events: [eventOf(staffEvents.markRemoved, "laboratory", {})] };
    }
    const { mediaType, width, height } = await demandImage(mark.bytes);
    const documentId = await keepDocument(tx, {
      ...mark,
      mediaType,
      receivedById: personIdOf(actor),
      receivedAt: now,
    });
    await saveMark(tx, version, documentId);
    const payload = { sha256: hex(sha256(mark.bytes)), mediaType, width, height };
    return { value: null, events: [eventOf(staffEvents.markSet, "laboratory", payload)] };
  },
});
