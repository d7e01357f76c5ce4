import { loadLastCalibrations } from "@/lib/data/portal/last-calibrations";
import { loadIntervals } from "@/lib/data/portal/recall-store";
import { isoDay } from "@/lib/domain/calibration/due";
import { cutSorted, turnOf } from "@/lib/domain/list/page";
import { intervalOf, isDueNow, sensorsDue } from "@/lib/domain/recall/sensors-due";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { answer } from "../view";

type Asked = { readonly after?: string; readonly before?: string };

/**
 * A page of the sensors that were certified, what is due first, by the interval the customer set. In which order they
 * come follows from intervals and days, so all of them are looked at, and a page of them is told.
 */
export const portalSensorsView = (actor: Actor, now: Date, asked: Asked = {}) =>
  answer(actor, "portal.read", async (tx) => {
    const customerId = customerIdOf(actor);
    const intervals = await loadIntervals(tx, customerId);
    const all = sensorsDue(intervals, await loadLastCalibrations(tx, customerId), isoDay(now));
    const page = cutSorted(all, turnOf(asked), ({ tag }) => tag);
    const { months, noticeDays } = intervalOf(intervals, "");
    return {
      sensors: page.rows,
      next: page.next,
      previous: page.previous,
      count: all.length,
      due: all.filter(isDueNow).length,
      forAll: { months, noticeDays },
    };
  });

export type PortalSensor = Awaited<ReturnType<typeof portalSensorsView>>["sensors"][number];
