import { loadLastCalibrations } from "@/lib/data/portal/last-calibrations";
import { loadIntervals } from "@/lib/data/portal/recall-store";
import { isoDay } from "@/lib/domain/calibration/due";
import { intervalOf, sensorsDue } from "@/lib/domain/recall/sensors-due";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { answer } from "../view";

/** Every sensor that was certified, what is due first, by the interval the customer set. */
export const portalSensorsView = (actor: Actor, now: Date) =>
  answer(actor, "portal.read", async (tx) => {
    const customerId = customerIdOf(actor);
    const intervals = await loadIntervals(tx, customerId);
    const sensors = sensorsDue(intervals, await loadLastCalibrations(tx, customerId), isoDay(now));
    const { months, noticeDays } = intervalOf(intervals, "");
    return { sensors, forAll: { months, noticeDays } };
  });

export type PortalSensor = Awaited<ReturnType<typeof portalSensorsView>>["sensors"][number];
