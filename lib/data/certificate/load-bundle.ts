import type { BundleMember, CertificateBundle } from "@/lib/domain/certificate/bundle";
import { say, sayAll } from "@/lib/domain/certificate/catalogue/message";
import type { CertificateParts } from "@/lib/domain/certificate/parts";
import { readLineOptions } from "@/lib/domain/order/options";
import { asCountingRule } from "@/lib/domain/parts/counting-rule";
import { decideWhichCounts } from "@/lib/domain/parts/decide-which-counts";
import { ok, type Result, refuse } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";
import { loadReviewRun, type ReviewRun } from "../review/load-review-run";
import { certificateParts } from "./certificate-parts";
import { withOneEnds } from "./with-one-ends";

type OfSensor = {
  readonly members: readonly BundleMember[];
  readonly repeats: CertificateBundle["repeats"];
  readonly earlierCounts: CertificateBundle["earlierCounts"];
  readonly findings: readonly string[];
  readonly performerIds: readonly string[];
};

const memberOf = (review: ReviewRun, sensorId: string): Result<BundleMember> => {
  const parts = certificateParts(review, sensorId);
  if (!parts.ok) return parts;
  const sensor = review.sensors.find(({ id }) => id === sensorId);
  return ok({
    kind: parts.value.set ?? "as-received",
    parts: parts.value,
    sensorId,
    customerId: sensor?.customerId ?? "",
    runId: review.run.id,
    evaluationId: review.evaluation?.id ?? "",
  });
};

/** Another run as it was when this sensor left its review: by the evaluation that was looked at then. */
const loadAsLeft = async (tx: Tx, runId: string, sensorId: string): Promise<ReviewRun | null> => {
  const left = await tx.reviewDecision.findFirst({
    where: { runId, sensorId, decision: { in: ["kept", "put-back"] } },
    orderBy: { id: "desc" },
  });
  return loadReviewRun(tx, runId, left?.evaluationId);
};

/** Of two measurements, the one that counts. Earlier runs behind them are named too. */
const counted = async (tx: Tx, review: ReviewRun, own: BundleMember): Promise<Result<OfSensor>> => {
  const { sensorId } = own;
  const alone = {
    members: [own],
    repeats: [],
    earlierCounts: [],
    findings: [],
    performerIds: review.performerIds,
  };
  const all = await tx.repeatMeasurement.findMany({ where: { sensorId }, orderBy: { authorisedAt: "asc" } });
  const repeat = all.find(({ runId }) => runId === review.run.id);
  const earlierReview = repeat && (await loadAsLeft(tx, repeat.earlierRunId, sensorId));
  if (!repeat || !earlierReview?.evaluation) return ok(alone);
  const earlier = memberOf(earlierReview, sensorId);
  if (!earlier.ok) return earlier;
  const which = decideWhichCounts(
    asCountingRule(repeat.countingRule),
    { run: earlierReview.run.number, points: earlier.value.parts.points },
    { run: review.run.number, points: own.parts.points },
  );
  const before = all.filter((one) => one.runId === repeat.earlierRunId).length;
  const tag = own.parts.sensor.tag;
  return ok({
    members: [which.counts === "earlier" ? earlier.value : own],
    repeats: [
      sayAll([
        say("repeat.of", { tag, what: which.said }),
        ...(before > 0 ? [say("repeat.itself-repeat", { run: earlierReview.run.number })] : []),
      ]),
    ],
    earlierCounts: which.counts === "earlier" ? [{ sensorId, note: which.note }] : [],
    findings: which.finding === null ? [] : [`${tag}: ${which.finding}`],
    performerIds: [...review.performerIds, ...earlierReview.performerIds],
  });
};

/** Results of this sensor that were kept for its certificate in other runs; what a repeat replaced is not among them. */
const keptElsewhere = async (tx: Tx, review: ReviewRun, sensorId: string) => {
  const rows = await tx.reviewDecision.findMany({
    where: { sensorId, decision: "kept", runId: { not: review.run.id } },
    orderBy: { id: "asc" },
  });
  const replaced = await tx.repeatMeasurement.findMany({ where: { sensorId } });
  const members: BundleMember[] = [];
  const performerIds: string[] = [];
  for (const { runId, evaluationId } of rows) {
    if (replaced.some(({ earlierRunId }) => earlierRunId === runId)) continue;
    const other = await loadReviewRun(tx, runId, evaluationId);
    const member = other && memberOf(other, sensorId);
    if (!other || !member?.ok) continue;
    members.push(member.value);
    performerIds.push(...other.performerIds);
  }
  return { members, performerIds };
};

const order = { "as-received": 0, "after-anneal": 1 } as const;

/** Each member told what stands beside it. */
const together = (members: readonly BundleMember[]): readonly BundleMember[] =>
  members
    .toSorted((left, right) => order[left.kind] - order[right.kind])
    .map((member) => {
      const beside = members.filter((one) => one !== member && one.kind === member.kind);
      const elsewhereCelsius = beside.flatMap(({ parts }) => parts.points.map((one) => one.nominalCelsius));
      const hasOtherSet = members.some(({ kind }) => kind !== member.kind);
      return {
        ...member,
        parts: {
          ...member.parts,
          ...(hasOtherSet ? { hasOtherSet } : {}),
          ...(elsewhereCelsius.length > 0 ? { elsewhereCelsius } : {}),
        },
      };
    });

const missingSet = (tag: string, sets: string, members: readonly BundleMember[]): string | null => {
  if (sets !== "both") return null;
  const has = (kind: BundleMember["kind"]) => members.some((member) => member.kind === kind);
  if (!has("after-anneal"))
    return `${tag} is ordered as received and after annealing, and was not measured after annealing yet. Keep these results for its certificate and let it go on.`;
  return has("as-received")
    ? null
    : `${tag} is ordered as received and after annealing, and no results as received were kept for its certificate.`;
};

type SetAside = NonNullable<CertificateParts["setAside"]>;

/** Measurements of this sensor that were put back: kept, and not reported here. */
const setAsideOf = async (tx: Tx, sensorId: string, members: readonly BundleMember[]): Promise<SetAside> => {
  const rows = await tx.reviewDecision.findMany({
    where: { sensorId, decision: "put-back", runId: { notIn: members.map(({ runId }) => runId) } },
    orderBy: { id: "asc" },
  });
  const runs = await tx.run.findMany({
    where: { id: { in: rows.map(({ runId }) => runId) } },
    select: { id: true, number: true },
  });
  const last = new Map(rows.map((row) => [row.runId, row]));
  return [...last.values()].map(({ runId, reason }) => ({
    run: runs.find(({ id }) => id === runId)?.number ?? "",
    reason: reason || "no reason recorded",
  }));
};

const withSetAside = (member: BundleMember, setAside: SetAside): BundleMember => ({
  ...member,
  parts: { ...member.parts, setAside },
});

const loadSensor = async (tx: Tx, review: ReviewRun, sensorId: string): Promise<Result<OfSensor>> => {
  const own = memberOf(review, sensorId);
  if (!own.ok) return own;
  const tag = own.value.parts.sensor.tag;
  if (
    review.decisions.some((one) => one.sensorId === sensorId && ["kept", "put-back"].includes(one.decision))
  )
    return refuse("wrong-state", `${tag} has left the review of this run.`);
  const counting = await counted(tx, review, own.value);
  if (!counting.ok) return counting;
  const kept = await keptElsewhere(tx, review, sensorId);
  const members = [...kept.members, ...counting.value.members];
  const sensor = review.sensors.find(({ id }) => id === sensorId);
  const lacking = missingSet(tag, readLineOptions(sensor?.line.options ?? "{}").sets, members);
  if (lacking !== null) return refuse("rule", lacking);
  const setAside = await setAsideOf(tx, sensorId, members);
  const told = setAside.length === 0 ? members : members.map((one) => withSetAside(one, setAside));
  return ok({
    ...counting.value,
    members: together(told),
    performerIds: [...counting.value.performerIds, ...kept.performerIds],
  });
};

/** What the certificate of one sensor, or of several of one line, is composed from: all their sets and runs. */
export const loadBundle = async (
  tx: Tx,
  review: ReviewRun,
  sensorIds: readonly string[],
): Promise<Result<CertificateBundle>> => {
  const all: OfSensor[] = [];
  for (const id of sensorIds) {
    const one = await loadSensor(tx, review, id);
    if (!one.ok) return one;
    all.push(one.value);
  }
  const first = review.sensors.find(({ id }) => id === sensorIds[0]);
  if (!first) return refuse("not-found", "No sensor is named.");
  const options = readLineOptions(first.line.options);
  const members = await withOneEnds(
    tx,
    first.line,
    options.report,
    all.flatMap((one) => one.members),
  );
  const filedUnder = members.findLast(({ sensorId }) => sensorId === first.id);
  if (!filedUnder) return refuse("not-found", "No sensor is named.");
  return ok({
    members,
    filedUnder,
    repeats: all.flatMap(({ repeats }) => repeats),
    earlierCounts: all.flatMap(({ earlierCounts }) => earlierCounts),
    findings: all.flatMap(({ findings }) => findings),
    asks: {
      budget: options.budget,
      evidence: options.evidence,
      language: options.language,
      form: options.form,
      ...(options.formAgreement ? { formAgreement: options.formAgreement } : {}),
    },
    performerIds: [...new Set(all.flatMap(({ performerIds }) => performerIds))],
  });
};
