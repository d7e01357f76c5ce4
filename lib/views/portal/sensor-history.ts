import { loadIntervals } from "@/lib/data/portal/recall-store";
import { loadSensorCertificates } from "@/lib/data/portal/sensor-certificates";
import { hasEnded } from "@/lib/domain/certificate/standing";
import { sensorHistory } from "@/lib/domain/history/sensor-history";
import { setsOf } from "@/lib/domain/history/sets-of";
import { plainSensorStates } from "@/lib/domain/order/progress";
import { intervalOf } from "@/lib/domain/recall/sensors-due";
import { isSensorState } from "@/lib/domain/sensor/transitions";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { answer, found } from "../view";

/** One sensor by its serial: where it is, its certificates, and how its errors went. Another's serial is not there. */
export const portalSensorHistoryView = (actor: Actor, serial: string) =>
  answer(actor, "portal.read", async (tx) => {
    const customerId = customerIdOf(actor);
    const { sensors, certificates } = await loadSensorCertificates(tx, customerId, serial);
    const latest = found(sensors.at(-1));
    const own = certificates.flatMap(({ content, standing, token }) => {
      const sets = setsOf(content).filter(
        ({ item }) => item.serial === serial && item.typeLetter === latest.typeLetter,
      );
      const [first] = sets;
      return first ? [{ content, standing, token, sets, tag: first.item.tag }] : [];
    });
    const { months, noticeDays, from } = intervalOf(await loadIntervals(tx, customerId), serial);
    return {
      serial,
      typeLetter: latest.typeLetter,
      construction: latest.construction,
      where: isSensorState(latest.state) ? plainSensorStates[latest.state] : "",
      interval: { months, noticeDays, from },
      certificates: own.map(({ content, standing, token, tag }) => ({
        standing,
        number: content.number,
        tag,
        order: content.order.number,
        performedOn: content.performedTo,
        issuedOn: content.issuedOn,
        href: `/api/certificates/${token}`,
      })),
      // What stands no longer is not drawn: what took its place is.
      series: sensorHistory(own.flatMap(({ sets, standing }) => (hasEnded(standing) ? [] : sets))),
    };
  });

export type PortalSensorHistory = Awaited<ReturnType<typeof portalSensorHistoryView>>;
