import { loadPhoto } from "@/lib/data/intake/photo-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "../view";

const endings: Readonly<Record<string, string>> = {
  "image/jpeg": "jpg",
  "image/png": "png",
  "image/webp": "webp",
};

/** One photo, to staff and to the customer whose sensor it shows; to everybody else it is not there. */
export const photoView = (actor: Actor, id: string) =>
  answer(actor, actor.kind === "customer" ? "portal.read" : "laboratory.read", async (tx) => {
    const photo = found(await loadPhoto(tx, id));
    const { tag } = await tx.sensor.findUniqueOrThrow({
      where: { id: photo.sensorId },
      select: { tag: true },
    });
    return {
      bytes: photo.bytes,
      mediaType: photo.mediaType,
      fileName: `${tag}.${endings[photo.mediaType] ?? "bin"}`,
    };
  });
