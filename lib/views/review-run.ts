import { withStandings } from "@/lib/data/certificate/with-standings";
import { hex } from "@/lib/data/hex";
import { holdsOf, type SensorHold } from "@/lib/data/hold/holds-of";
import type { Tx } from "@/lib/data/in-scope";
import { type Duty, loadDuty } from "@/lib/data/review/load-duty";
import { loadDoubts } from "@/lib/data/review/load-exceptions";
import { leftReview } from "@/lib/data/review/load-open-lot";
import { loadReviewRun, type ReviewRun } from "@/lib/data/review/load-review-run";
import { nextToOpen } from "@/lib/data/review/next-to-open";
import { reviewLots } from "@/lib/data/review/review-lots";
import { resultHref, submissionOf } from "@/lib/data/review/review-summary";
import { reviewedContent } from "@/lib/data/review/reviewed-content";
import { loadRollsOf } from "@/lib/data/roll/load-rolls";
import { sha256 } from "@/lib/data/sha256";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import type { StandingHold } from "@/lib/domain/hold/decide-not-held";
import { decideRollEnds, type RollsOfOrder } from "@/lib/domain/order/decide-roll-ends";
import { readLineOptions } from "@/lib/domain/order/options";
import { decideNotInDoubt, type InDoubt } from "@/lib/domain/review/decide-not-in-doubt";
import { gateCounts } from "@/lib/domain/review/gate-counts";
import { type Actor, actorIdOf } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { reviewCell } from "./review-cell";
import { answer, found } from "./view";

const loadReview = async (tx: Tx, runId: string) => {
  const review = found(await loadReviewRun(tx, runId));
  return { ...review, certificates: await withStandings(tx, review.certificates) };
};

type Review = Awaited<ReturnType<typeof loadReview>>;

/** Of a sensor whose certificate was followed by another: the one that counts. */
const certificateOf = ({ certificates }: Review, id: string) => {
  const first = certificates.find(({ sensorId }) => sensorId === id);
  return first ? { number: first.number, standing: first.standing } : null;
};

/** In few words, where it is settled: the hold's own reason stands on that page. */
const holdLine = ({ tag, isToBeReturned, nonconformity }: StandingHold) => {
  if (isToBeReturned) return { words: "Goes back unmeasured, see", name: tag, href: `/sensors/${tag}#holds` };
  return nonconformity
    ? { words: "On hold, see", name: nonconformity, href: `/quality/${nonconformity}` }
    : { words: "On hold, see", name: tag, href: `/sensors/${tag}#holds` };
};

type Beside = {
  readonly holds: readonly SensorHold[];
  /** Of each order here with a rule set, by its number. */
  readonly rolls: ReadonlyMap<string, RollsOfOrder>;
};

/** What every sensor is held against, asked for once. */
const loadBeside = async (tx: Tx, { sensors }: Review): Promise<Beside> => {
  const holds = await holdsOf(
    tx,
    sensors.map(({ id }) => id),
  );
  const rolls = new Map<string, RollsOfOrder>();
  for (const { order } of sensors.map(({ line }) => line))
    if (!rolls.has(order.number)) rolls.set(order.number, await loadRollsOf(tx, order));
  return { holds, rolls };
};

const sensorOf = async (
  tx: Tx,
  review: Review,
  duty: Duty,
  beside: Beside,
  sensor: Review["sensors"][number],
) => {
  const { line } = sensor;
  const isPerLot = readLineOptions(line.options).report === "per-lot";
  const composed = await reviewedContent(tx, review, [sensor.id]);
  const rolls = isPerLot ? undefined : beside.rolls.get(line.order.number);
  const ends = rolls ? decideRollEnds(rolls, [sensor.id], "per-sensor") : null;
  const holds = beside.holds.filter(({ sensorId }) => sensorId === sensor.id).map(holdLine);
  const obstacles = [composed, ends].flatMap((one) => (one && !one.ok ? [one.refusal.message] : []));
  const hash = composed.ok ? hex(contentHash(composed.value.content, sha256)) : null;
  const left = leftReview(review, sensor.id) ?? null;
  const results = review.evaluation?.results.filter(({ sensorId }) => sensorId === sensor.id) ?? [];
  return {
    id: sensor.id,
    tag: sensor.tag,
    serial: sensor.serial,
    typeLetter: sensor.typeLetter,
    customer: sensor.line.order.customer.name,
    order: sensor.line.order.number,
    state: sensor.state,
    /** Hash of what its own certificate would say; null where there is none, or it stands on its lot's. */
    draftHash: isPerLot ? null : hash,
    /** The same where it can be signed: sent back at sign-off. */
    reviewedHash: isPerLot || obstacles.length + holds.length > 0 ? null : hash,
    /** What a repeat has found, for the signatory. */
    findings: composed.ok ? composed.value.bundle.findings : [],
    left: left ? { results: left.decision as "kept" | "put-back", reason: left.reason } : null,
    lineId: sensor.line.id,
    isPerLot,
    /** What keeps it from being signed until it ends elsewhere. */
    holds: holds.filter(({ name }, at) => holds.findIndex((one) => one.name === name) === at),
    /** Why no certificate can be signed for it beside that, with the remedy; empty where one can. */
    obstacle: obstacles.join(" "),
    /** What its certificate will state as deviations from the method. */
    deviations: composed.ok ? composed.value.content.deviations : [],
    openRemarks: duty.remarks.filter((one) => !one.isSettled && one.sensorId === sensor.id).length,
    certificate: certificateOf(review, sensor.id),
    cells: review.run.setpoints.map((setpoint) => {
      const result = results.find(({ setpointId }) => setpointId === setpoint.id);
      return result ? reviewCell(review, duty, result) : null;
    }),
  };
};

const replacingOf = ({ replacing, sensors }: ReviewRun) =>
  [...new Set(replacing.map(({ certificate }) => certificate))].map((certificate) => ({
    certificate,
    tags: sensors
      .filter(({ id }) => replacing.some((one) => one.certificate === certificate && one.sensorId === id))
      .map(({ tag }) => tag),
  }));

/** May this person sign here: as anybody, only with a reason by policy, or not at all. */
const standingOf = (
  actor: Actor,
  review: ReviewRun,
): "free" | "with-reason" | "performer" | "not-permitted" => {
  if (actor.kind !== "staff" || !may(actor.roles, "review.decide")) return "not-permitted";
  if (!review.performerIds.includes(actorIdOf(actor))) return "free";
  return review.laboratory.performerMaySignOff ? "with-reason" : "performer";
};

const exceptionLines = (review: ReviewRun, exceptions: Duty["exceptions"]) =>
  exceptions.map(({ weight: _, point, others = [], isNote, href = null, ...line }) => {
    const result =
      point &&
      review.evaluation?.results.find(
        (one) => one.point.sensor === point.sensor && one.point.setpoint === point.setpoint,
      );
    return {
      ...line,
      isNote: isNote ?? false,
      results: point ? 1 + others.length : 0,
      href: result ? resultHref(review, result.sensorId, result.setpointId) : href,
    };
  });

/** In doubt; and why nothing can be signed for it now, empty where something can. */
const doubtsOf = (inDoubt: readonly InDoubt[]) => {
  const decided = decideNotInDoubt(inDoubt);
  return { inDoubt, doubtObstacle: decided.ok ? "" : decided.refusal.message };
};

export const reviewRunView = (actor: Actor, number: string) =>
  answer(actor, "review.read", async (tx) => {
    const run = found(await tx.run.findUnique({ where: { number }, select: { id: true } }));
    const review = await loadReview(tx, run.id);
    const evaluation = found(review.evaluation);
    const duty = await loadDuty(tx, review, actor);
    const sensors = [];
    const beside = await loadBeside(tx, review);
    for (const sensor of review.sensors) sensors.push(await sensorOf(tx, review, duty, beside, sensor));
    const tagOf = (id: string | null) => review.sensors.find((sensor) => sensor.id === id)?.tag ?? null;
    return {
      runId: review.run.id,
      number: review.run.number,
      state: review.run.state,
      evaluationId: evaluation.id,
      evaluation: {
        sequence: evaluation.sequence,
        engineVersion: evaluation.engineVersion,
        inputsDigest: hex(evaluation.inputsDigest),
        at: evaluation.evaluatedAt.toISOString(),
      },
      furnace: `${review.configuration.furnace.tag}, ${review.configuration.name}`,
      performers: review.performerIds.flatMap((id) => review.names.get(id) ?? []),
      submission: submissionOf(review),
      standing: standingOf(actor, review),
      setpoints: review.run.setpoints.map(({ position, celsius }) => ({
        position,
        label: `${Number(celsius.toFixed(2))} °C`,
      })),
      exceptions: exceptionLines(review, duty.exceptions),
      gate: gateCounts(review.gateRows),
      settledExceptions: duty.settledExceptions,
      deviations: [...new Set(sensors.flatMap(({ deviations }) => deviations))],
      duty: {
        mustOpen: duty.mustOpen.length,
        opened: duty.mustOpen.length - duty.unopened.length,
        next: nextToOpen(review, duty, null),
      },
      remarks: duty.remarks,
      /** Certificates that are to be replaced by what was evaluated since, each with its sensors. */
      replacing: replacingOf(review),
      ...doubtsOf(await loadDoubts(tx, review)),
      sensors,
      /** One certificate for all sensors of a line that are still open here, where the order asks for it. */
      lots: await reviewLots(
        tx,
        review,
        sensors.map((one) => ({
          ...one,
          isDone: one.certificate !== null || one.left !== null,
          obstacle: [...one.holds.map(({ name, words }) => `${words} ${name}.`), one.obstacle]
            .join(" ")
            .trim(),
        })),
      ),
      decisions: review.decisions.map((decision) => ({
        key: String(decision.id),
        decision: decision.decision,
        sensor: tagOf(decision.sensorId),
        reason: decision.reason || (decision.exceptionReason ?? ""),
        by: review.names.get(decision.decidedById) ?? "",
        at: decision.decidedAt.toISOString(),
      })),
    };
  });

export type ReviewRunPage = Awaited<ReturnType<typeof reviewRunView>>;
