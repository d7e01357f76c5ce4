import { CertificateContent } from "@/lib/domain/certificate/content";
import type { EarlierResult } from "@/lib/domain/review/earlier-result";
import { earlierRows, performedToOf } from "@/lib/domain/review/earlier-rows";
import type { Tx } from "../in-scope";
import { certificatesOfSensors } from "../parts/certificates-of-sensors";
import type { ReviewRun, ReviewSensor } from "./load-review-run";

/** A nominal of a certificate and a setpoint of a run are one but for the rounding of °F. */
const sameTemperatureCelsius = 0.006;

type Known = Pick<ReviewSensor, "id" | "tag" | "customerId" | "serial" | "typeLetter">;

const isSame = (one: Known, other: Known): boolean =>
  one.customerId === other.customerId && one.serial === other.serial && one.typeLetter === other.typeLetter;

/** The labels each sensor ever had here: one that comes again gets a new one. */
const labelsOf = (tx: Tx, sensors: readonly Known[]): Promise<Known[]> =>
  tx.sensor.findMany({
    where: {
      customerId: { in: [...new Set(sensors.map(({ customerId }) => customerId))] },
      serial: { in: sensors.map(({ serial }) => serial) },
    },
    select: { id: true, tag: true, customerId: true, serial: true, typeLetter: true },
  });

/** Certificates that stood when the run began: signed before it, and not followed by another or withdrawn. */
const standingBefore = async (tx: Tx, review: ReviewRun, labels: readonly Known[]) => {
  const all = await certificatesOfSensors(
    tx,
    labels.map(({ id }) => id),
  );
  const before = all.filter(({ signedAt }) => signedAt < review.run.createdAt);
  if (before.length === 0) return [];
  const ended = await tx.certificateEnding.findMany({
    where: { certificateId: { in: before.map(({ id }) => id) } },
    select: { certificateId: true },
  });
  const gone = new Set(ended.map(({ certificateId }) => certificateId));
  return before.filter(({ id }) => !gone.has(id)).sort((left, right) => +right.signedAt - +left.signedAt);
};

/** What the last standing certificate of each sensor of the run says at the run's setpoints. */
export const loadEarlier = async (tx: Tx, review: ReviewRun): Promise<readonly EarlierResult[]> => {
  const labels = await labelsOf(tx, review.sensors);
  const standing = await standingBefore(tx, review, labels);
  const last = review.sensors.flatMap((sensor) => {
    const own = labels.filter((label) => isSame(label, sensor));
    const certificate = standing.find(({ sensorId }) => own.some(({ id }) => id === sensorId));
    const label = own.find(({ id }) => id === certificate?.sensorId);
    return certificate && label ? [{ sensor, certificate, label }] : [];
  });
  if (last.length === 0) return [];
  const rows = await tx.certificate.findMany({
    where: { id: { in: [...new Set(last.map(({ certificate }) => certificate.id))] } },
    select: { id: true, content: true },
  });
  const contents = new Map(
    rows.map(({ id, content }) => [id, CertificateContent.parse(JSON.parse(content))]),
  );
  return last.flatMap(({ sensor, certificate, label }) => {
    const content = contents.get(certificate.id);
    const said = content ? earlierRows(content, label.tag) : [];
    return (review.evaluation?.results ?? []).flatMap(({ sensorId, point }) => {
      const row =
        sensorId === sensor.id &&
        said.find(({ celsius }) => Math.abs(celsius - point.nominalCelsius) <= sameTemperatureCelsius);
      return row && content
        ? [
            {
              sensor: point.sensor,
              setpoint: point.setpoint,
              errorCelsius: row.errorCelsius,
              expandedCelsius: row.expandedCelsius,
              coverageFactor: row.coverageFactor,
              certificate: certificate.number,
              performedTo: performedToOf(content, label.tag),
            },
          ]
        : [];
    });
  });
};
