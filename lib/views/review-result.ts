import { certificateParts } from "@/lib/data/certificate/certificate-parts";
import { withStandings } from "@/lib/data/certificate/with-standings";
import { loadReadings, type Readings } from "@/lib/data/evidence/read-scan-channels";
import type { Tx } from "@/lib/data/in-scope";
import { loadReviewRun, type ReviewRun } from "@/lib/data/review/load-review-run";
import { resultHref } from "@/lib/data/review/review-summary";
import { english } from "@/lib/domain/certificate/catalogue/settle";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import { routeLabels, standardRoleLabels } from "@/lib/domain/certificate/labels";
import { dominantLabel } from "@/lib/domain/review/dominant-label";
import type { Actor } from "@/lib/domain/staff/actor";
import { standingOn } from "@/lib/domain/trace/trace-certificate";
import { resultDuty } from "./review-result-duty";
import { answer, found } from "./view";

type Window = ReviewRun["windows"][number];

/**
 * What the mean was taken of: the window alone, since the ramp beside it would make everything in it a flat line.
 * Without a window, everything. Signs of reversed readings turned.
 */
const within = (readings: Readings, window: Window | undefined) => {
  const seconds: number[] = [];
  const values: number[] = [];
  for (const [index, at] of readings.times.entries()) {
    if (window && (at < window.fromSeconds || at > window.toSeconds)) continue;
    seconds.push(at);
    values.push((readings.values[index] ?? Number.NaN) * (readings.polarity[index] === -1 ? -1 : 1));
  }
  return { seconds, values };
};

const traces = async (tx: Tx, review: ReviewRun, sensorId: string, window: Window | undefined) => {
  const places = review.run.places.filter(
    (place) => place.sensorId === sensorId || place.kind === "reference",
  );
  const readings = await loadReadings(tx, review.run.id, { channels: places.map(({ channel }) => channel) });
  return places
    .sort((left, right) => Number(right.sensorId === sensorId) - Number(left.sensorId === sensorId))
    .flatMap((place) => {
      const found = readings.get(place.channel);
      const tag = review.standards.find(({ id }) => id === place.equipmentId)?.tag;
      return found
        ? [{ channel: place.channel, label: tag ? `Reference ${tag}` : "Sensor", ...within(found, window) }]
        : [];
    });
};

const windowOf = (review: ReviewRun, window: Window | undefined) => {
  if (!window) return null;
  const assessment = JSON.parse(window.assessment) as {
    readonly meets?: boolean;
    readonly reasons?: readonly string[];
    readonly reason?: string;
  };
  return {
    fromSeconds: window.fromSeconds,
    toSeconds: window.toSeconds,
    origin: window.origin,
    acceptedBy: review.names.get(window.acceptedById) ?? "",
    acceptedAt: window.acceptedAt.toISOString(),
    meets: assessment.meets ?? null,
    reasons: [...(assessment.reasons ?? []), ...(assessment.reason ? [assessment.reason] : [])],
  };
};

const tipOf = (review: ReviewRun, sensorId: string) => {
  const place = review.run.places.find((candidate) => candidate.sensorId === sensorId);
  const tip = review.tipChecks.find(({ loadPlaceId }) => loadPlaceId === place?.id);
  return {
    place: place?.place ?? "",
    channel: place?.channel ?? "",
    immersionMillimetre: place?.immersionMillimetre ?? null,
    check: tip
      ? {
          riseMicrovolt: tip.riseMicrovolt,
          onlyThisChannel: tip.onlyThisChannel,
          by: review.names.get(tip.checkedById) ?? "",
          at: tip.checkedAt.toISOString(),
        }
      : null,
  };
};

/** Before and after this one, in the order of sensors and setpoints. */
const neighbours = (review: ReviewRun, sensorId: string, setpointId: string) => {
  const all = review.sensors.flatMap((sensor) =>
    review.run.setpoints
      .filter((setpoint) =>
        review.evaluation?.results.some(
          (result) => result.sensorId === sensor.id && result.setpointId === setpoint.id,
        ),
      )
      .map((setpoint) => ({ sensorId: sensor.id, setpointId: setpoint.id })),
  );
  const index = all.findIndex((one) => one.sensorId === sensorId && one.setpointId === setpointId);
  const hrefOf = (at: number) => {
    const one = all[at];
    return one ? resultHref(review, one.sensorId, one.setpointId) : null;
  };
  return { previous: hrefOf(index - 1), next: hrefOf(index + 1), place: index + 1, of: all.length };
};

/** The one in force, of those that state results of this run where there are any; else the last that was. */
const certificateOf = async (tx: Tx, review: ReviewRun, sensorId: string): Promise<string | null> => {
  const own = await withStandings(
    tx,
    review.certificates.filter((one) => one.sensorId === sensorId),
  );
  const ofRun = { runId: review.run.id, sensorId };
  const ids = own.map(({ id }) => id);
  const rows = await tx.certificate.findMany({ where: { id: { in: ids }, ...ofRun }, select: { id: true } });
  const parts = await tx.certificatePart.findMany({
    where: { certificateId: { in: ids }, ...ofRun },
    select: { certificateId: true },
  });
  const stating = new Set([...rows.map(({ id }) => id), ...parts.map((part) => part.certificateId)]);
  const here = own.find(({ id }) => stating.has(id));
  return (here ?? own[0])?.number ?? null;
};

const certificateSide = (review: ReviewRun, sensorId: string) => {
  const parts = certificateParts(review, sensorId);
  if (!parts.ok) return { standards: [], deviations: [], obstacle: parts.refusal.message, rows: [] };
  const content = composeCertificate(parts.value, null);
  return {
    standards: parts.value.standards.map((part) => {
      const standard = { ...part, description: english(part.description) };
      return {
        ...standard,
        roleLabel: standardRoleLabels[standard.role],
        routeLabel: routeLabels[standard.route] ?? standard.route,
        standing: standingOn(standard, parts.value.run),
      };
    }),
    deviations: content.ok ? content.value.deviations : [],
    obstacle: content.ok ? "" : content.refusal.message,
    rows: content.ok ? content.value.rows : [],
  };
};

/** The rule and the digits of U that this sensor's evaluation used. */
const agreedFor = ({ evaluation }: ReviewRun, tag: string) => {
  const sensor = evaluation?.head.sensors.find(({ id }) => id === tag);
  const digits = sensor?.uncertaintyDigits ?? evaluation?.head.rounding.uncertaintyDigits ?? 2;
  const rule = sensor?.decisionRule ?? evaluation?.head.decisionRule ?? { kind: "none" as const };
  return { rule, digits };
};

/** One sensor at one setpoint with all it rests on. */
export const reviewResultView = (actor: Actor, number: string, tag: string, position: number) =>
  answer(actor, "review.read", async (tx) => {
    const run = found(await tx.run.findUnique({ where: { number }, select: { id: true } }));
    const review = found(await loadReviewRun(tx, run.id));
    const sensor = found(review.sensors.find((candidate) => candidate.tag === tag));
    const setpoint = found(review.run.setpoints.find((candidate) => candidate.position === position));
    const result = found(
      review.evaluation?.results.find((one) => one.sensorId === sensor.id && one.setpointId === setpoint.id),
    );
    const { point } = result;
    const window = review.windows.find(({ setpointId }) => setpointId === setpoint.id);
    return {
      number,
      runState: review.run.state,
      tag,
      serial: sensor.serial,
      typeLetter: sensor.typeLetter,
      customer: sensor.line.order.customer.name,
      nominal: `${Number(setpoint.celsius.toFixed(2))} °C`,
      point,
      dominant: point.state === "measured" ? dominantLabel(point) : "",
      agreed: agreedFor(review, tag),
      window: windowOf(review, window),
      traces: await traces(tx, review, sensor.id, window),
      blocks: review.blocks.map((block) => ({
        sequence: block.sequence,
        source: block.source,
        fileName: block.fileName ?? "",
        by: review.names.get(block.receivedById) ?? "",
        at: block.receivedAt.toISOString(),
      })),
      tip: tipOf(review, sensor.id),
      certificate: await certificateOf(tx, review, sensor.id),
      ...certificateSide(review, sensor.id),
      neighbours: neighbours(review, sensor.id, setpoint.id),
      duty: await resultDuty(tx, review, actor, result),
    };
  });

export type ReviewResultPage = Awaited<ReturnType<typeof reviewResultView>>;
