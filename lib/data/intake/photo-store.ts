import type { Tx } from "../in-scope";
import { isUuid } from "../is-uuid";
import { sha256 } from "../sha256";

type NewPhoto = {
  readonly sensorId: string;
  readonly customerId: string;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly caption: string;
  readonly takenById: string;
  readonly takenAt: Date;
};

export const insertPhoto = (tx: Tx, photo: NewPhoto): Promise<{ id: string }> => {
  const bytes = Uint8Array.from(photo.bytes);
  return tx.sensorPhoto.create({ data: { ...photo, bytes, sha256: sha256(bytes) }, select: { id: true } });
};

export const countPhotos = (tx: Tx, sensorId: string): Promise<number> =>
  tx.sensorPhoto.count({ where: { sensorId } });

/** The photos of a sensor without their bytes, in the order they were taken. */
export const photosOf = (tx: Tx, sensorId: string) =>
  tx.sensorPhoto.findMany({
    where: { sensorId },
    select: { id: true, width: true, height: true, caption: true, takenAt: true },
    orderBy: [{ takenAt: "asc" }, { id: "asc" }],
  });

export const loadPhoto = async (tx: Tx, id: string) =>
  isUuid(id)
    ? tx.sensorPhoto.findUnique({
        where: { id },
        select: { bytes: true, mediaType: true, sensorId: true },
      })
    : null;
