import { loadStandings } from "@/lib/data/certificate/standing";
import { CertificateContent } from "@/lib/domain/certificate/content";
import type { Tx } from "../in-scope";
import { loadSerialNames } from "./serial-names";

/** Certificates that speak of any of these sensors, its own or one of a lot. */
const certificateIds = async (tx: Tx, sensorIds: readonly string[]): Promise<readonly string[]> => {
  const own = await tx.certificate.findMany({
    where: { sensorId: { in: [...sensorIds] } },
    select: { id: true },
  });
  const parts = await tx.certificatePart.findMany({
    where: { sensorId: { in: [...sensorIds] } },
    select: { certificateId: true },
  });
  return [...new Set([...own.map(({ id }) => id), ...parts.map(({ certificateId }) => certificateId)])];
};

/**
 * A customer's sensors of one serial, and their certificates over the years, the oldest first. A sensor that comes again
 * has a new label; its serial and type say that it is the same. A serial that a certificate was corrected to leads to the
 * sensor as well as the one it was taken in with.
 */
export const loadSensorCertificates = async (tx: Tx, customerId: string, serial: string) => {
  const names = await loadSerialNames(tx, customerId);
  const sensors = await tx.sensor.findMany({
    where: { customerId, OR: [{ serial }, { id: { in: [...names.idsOf([serial])] } }] },
    select: {
      ...{ id: true, tag: true, serial: true, typeLetter: true, construction: true, state: true },
      line: { select: { providerId: true } },
    },
    orderBy: { tag: "asc" },
  });
  const rows = await tx.certificate.findMany({
    where: {
      id: {
        in: [
          ...(await certificateIds(
            tx,
            sensors.map(({ id }) => id),
          )),
        ],
      },
    },
    select: { id: true, content: true, token: true, sensorId: true },
    orderBy: { number: "asc" },
  });
  const standings = await loadStandings(
    tx,
    rows.map(({ id }) => id),
  );
  return {
    sensors: sensors.map((sensor) => ({ ...sensor, name: names.nameOf(sensor) })),
    certificates: rows.map(({ content, id, token, sensorId }) => ({
      ...{ token, sensorId },
      standing: standings.get(id) ?? ({ kind: "valid" } as const),
      content: CertificateContent.parse(JSON.parse(content)),
    })),
  };
};
