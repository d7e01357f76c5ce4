import { loadIntervals } from "@/lib/data/portal/recall-store";
import { loadSensorCertificates } from "@/lib/data/portal/sensor-certificates";
import { countedReports } from "@/lib/data/provider/report-store";
import { noneStands } from "@/lib/domain/certificate/none-stands";
import { hasEnded } from "@/lib/domain/certificate/standing";
import { sensorHistory } from "@/lib/domain/history/sensor-history";
import { setsOf } from "@/lib/domain/history/sets-of";
import { intervalOf } from "@/lib/domain/recall/sensors-due";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { answer, found } from "../view";
import { externalOf, whereOf } from "./external-result";

type Sensor = Awaited<ReturnType<typeof loadSensorCertificates>>["sensors"][number];

/**
 * Of the sensors that were ever called so, those that are: two may have borne one serial until a certificate was
 * corrected. Where all were corrected to another one, whoever asks by the old serial is shown what became of it.
 */
const shownOf = (sensors: readonly Sensor[], serial: string) => {
  const named = sensors.filter(({ name }) => name === serial);
  const shown = named.length > 0 ? named : sensors;
  const latest = found(shown.at(-1));
  return { latest, tags: new Set(shown.map(({ tag }) => tag)) };
};

/** One sensor by its serial: where it is, its certificates, and how its errors went. Another's serial is not there. */
export const portalSensorHistoryView = (actor: Actor, serial: string) =>
  answer(actor, "portal.read", async (tx) => {
    const customerId = customerIdOf(actor);
    const { sensors, certificates } = await loadSensorCertificates(tx, customerId, serial);
    const { latest, tags } = shownOf(sensors, serial);
    const everCalledSo = new Set(sensors.map(({ tag }) => tag));
    const own = certificates.flatMap(({ content, standing, token }) => {
      const sets = setsOf(content).filter(
        ({ item }) => everCalledSo.has(item.tag) && item.typeLetter === latest.typeLetter,
      );
      const [first] = sets;
      return first ? [{ content, standing, token, sets, item: first.item }] : [];
    });
    const { months, noticeDays, from } = intervalOf(await loadIntervals(tx, customerId), latest.name);
    const reports = await countedReports(
      tx,
      sensors.flatMap(({ id, tag }) => (tags.has(tag) ? [id] : [])),
    );
    const isOfLatest = ({ item }: (typeof own)[number]["sets"][number]) => item.tag === latest.tag;
    return {
      serial,
      /** What other laboratories measured of it for us. */
      externals: [...reports.values()].flatMap((report) => externalOf(report) ?? []),
      typeLetter: latest.typeLetter,
      construction: latest.construction,
      where:
        latest.state === "issued" && noneStands(own.filter(({ sets }) => sets.some(isOfLatest)))
          ? "Certificate withdrawn"
          : whereOf(latest.state, latest.line.providerId !== null),
      /** Its serial today. */
      name: latest.name,
      interval: { months, noticeDays, from },
      /** What certificates were corrected to, and what was read when it came: where that is another serial. */
      nowCalled: [...new Set(sensors.map(({ name }) => name))].filter((name) => name !== serial),
      takenInAs: [...new Set(sensors.map((sensor) => sensor.serial))].filter((other) => other !== serial),
      certificates: own.map(({ content, standing, token, item }) => ({
        standing,
        number: content.number,
        tag: item.tag,
        names: item.serial,
        order: content.order.number,
        performedOn: content.performedTo,
        issuedOn: content.issuedOn,
        href: `/api/certificates/${token}`,
      })),
      noResult: !noneStands(own)
        ? "No result yet."
        : own.length === 1
          ? "Its only result is withdrawn."
          : "None of its results stands any more.",
      // What stands no longer is not drawn: what took its place is.
      series: sensorHistory(
        own.flatMap(({ sets, standing }) =>
          hasEnded(standing) ? [] : sets.filter(({ item }) => tags.has(item.tag)),
        ),
      ),
    };
  });

export type PortalSensorHistory = Awaited<ReturnType<typeof portalSensorHistoryView>>;
