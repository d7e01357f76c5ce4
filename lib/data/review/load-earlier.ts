import { CertificateContent } from "@/lib/domain/certificate/content";
import type { EarlierResult } from "@/lib/domain/review/earlier-result";
import { earlierRows, performedToOf } from "@/lib/domain/review/earlier-rows";
import type { Tx } from "../in-scope";
import { certificatesOfSensors } from "../parts/certificates-of-sensors";
import { loadSerialNames, type SerialNames } from "../portal/serial-names";
import type { ReviewRun, ReviewSensor } from "./load-review-run";

/** A nominal of a certificate and a setpoint of a run are one but for the rounding of °F. */
const sameTemperatureCelsius = 0.006;

type Known = Pick<ReviewSensor, "id" | "tag" | "customerId" | "serial" | "typeLetter">;

/** Under the serial it was corrected to, where a certificate of it was: as its owner's list of sensors has it. */
const isSame = (one: Known, other: Known, names: Names): boolean =>
  one.customerId === other.customerId &&
  one.typeLetter === other.typeLetter &&
  nameIn(names, one) === nameIn(names, other);

type Names = ReadonlyMap<string, SerialNames>;

const nameIn = (names: Names, sensor: Known): string =>
  names.get(sensor.customerId)?.nameOf(sensor) ?? sensor.serial;

const namesOf = async (tx: Tx, sensors: readonly Known[]): Promise<Names> => {
  const names = new Map<string, SerialNames>();
  for (const { customerId } of sensors)
    if (!names.has(customerId)) names.set(customerId, await loadSerialNames(tx, customerId));
  return names;
};

/** The labels each sensor ever had here: one that comes again gets a new one. */
const labelsOf = (tx: Tx, sensors: readonly Known[], names: Names): Promise<Known[]> => {
  const serials = [...new Set(sensors.map((sensor) => nameIn(names, sensor)))];
  return tx.sensor.findMany({
    where: {
      customerId: { in: [...names.keys()] },
      OR: [
        { serial: { in: serials } },
        { id: { in: [...names.values()].flatMap(({ idsOf }) => [...idsOf(serials)]) } },
      ],
    },
    select: { id: true, tag: true, customerId: true, serial: true, typeLetter: true },
  });
};

/**
 * Certificates whose results stood when the run began, and that stand now: one that followed since then states results
 * of before it.
 */
const standingBefore = async (tx: Tx, review: ReviewRun, labels: readonly Known[]) => {
  const all = await certificatesOfSensors(
    tx,
    labels.map(({ id }) => id),
  );
  if (all.length === 0) return [];
  const ended = await tx.certificateEnding.findMany({
    where: { certificateId: { in: all.map(({ id }) => id) } },
    select: { certificateId: true, successorId: true },
  });
  const gone = new Set(ended.map(({ certificateId }) => certificateId));
  const follows = new Map(
    ended.flatMap(({ certificateId, successorId }) =>
      successorId ? [[successorId, certificateId] as const] : [],
    ),
  );
  const signed = new Map(all.map(({ id, signedAt }) => [id, signedAt]));
  const measuredBefore = (id: string): boolean => {
    const earlier = follows.get(id);
    return earlier
      ? measuredBefore(earlier)
      : (signed.get(id) ?? review.run.createdAt) < review.run.createdAt;
  };
  return all
    .filter(({ id }) => !gone.has(id) && measuredBefore(id))
    .sort((left, right) => +right.signedAt - +left.signedAt);
};

/** What the last standing certificate of each sensor of the run says at the run's setpoints. */
export const loadEarlier = async (tx: Tx, review: ReviewRun): Promise<readonly EarlierResult[]> => {
  const names = await namesOf(tx, review.sensors);
  const labels = await labelsOf(tx, review.sensors, names);
  const standing = await standingBefore(tx, review, labels);
  const last = review.sensors.flatMap((sensor) => {
    const own = labels.filter((label) => isSame(label, sensor, names));
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
