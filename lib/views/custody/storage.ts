import { whereaboutsOf } from "@/lib/data/custody/whereabouts-of";
import { keptSensors } from "@/lib/data/sql/kept-sensors";
import { storedSensors } from "@/lib/data/sql/stored-sensors";
import { isoDay } from "@/lib/domain/calibration/due";
import { whereabouts } from "@/lib/domain/custody/whereabouts";
import { type HandBack, handBackLabels } from "@/lib/domain/sensor/hand-back";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "../view";

const dayMilliseconds = 86_400_000;
const most = 500;

/** Storage places with what lies in them, and sensors that could have gone longer ago than the laboratory says. */
export const storageView = (actor: Actor, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const places = await tx.storagePlace.findMany({ orderBy: { code: "asc" } });
    const stored = await storedSensors(tx, most);
    const laboratory = await tx.laboratory.findFirst({
      select: { sensorRetentionDays: true, version: true },
    });
    const days = laboratory?.sensorRetentionDays ?? 30;
    const before = new Date(now.getTime() - days * dayMilliseconds);
    const kept = await keptSensors(tx, before, most);
    const last = await whereaboutsOf(
      tx,
      kept.map(({ id }) => id),
    );
    const isStaff = actor.kind === "staff";
    return {
      places: places.map((place) => ({
        ...place,
        tags: stored.flatMap(({ tag, placeId }) => (placeId === place.id ? [tag] : [])),
      })),
      retention: { days, version: laboratory?.version ?? 1 },
      keptCount: kept[0]?.count ?? 0,
      kept: kept.map(({ id, tag, orderNumber, why, since }) => {
        const line = last.get(id);
        return {
          tag,
          orderNumber,
          why: handBackLabels[why as HandBack],
          since: isoDay(since),
          days: Math.floor((now.getTime() - since.getTime()) / dayMilliseconds),
          where: line ? whereabouts({ ...line, place: `${line.placeCode} ${line.placeName}` }) : "not known",
        };
      }),
      mayMove: isStaff && may(actor.roles, "custody.record"),
      mayConfigure: isStaff && may(actor.roles, "storage.configure"),
      mayDispose: isStaff && may(actor.roles, "sensor.release"),
    };
  });

export type StorageView = Awaited<ReturnType<typeof storageView>>;
