import { randomBytes } from "node:crypto";
import { z } from "zod";
import { adoptSigned } from "@/lib/data/calibration/adopt-signed";
import { certificateParts } from "@/lib/data/certificate/certificate-parts";
import { insertCertificate } from "@/lib/data/certificate/insert-certificate";
import { hex } from "@/lib/data/hex";
import { holdsOf } from "@/lib/data/hold/holds-of";
import { nextNumber } from "@/lib/data/number/next-number";
import { closeReview } from "@/lib/data/review/close-review";
import { loadReviewRun, type ReviewRun } from "@/lib/data/review/load-review-run";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { sha256 } from "@/lib/data/sha256";
import { lockRun } from "@/lib/data/sql/lock-run";
import { freezeChain } from "@/lib/data/trace/freeze-chain";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { calibrationEvents } from "@/lib/domain/calibration/events";
import { certificateNumber } from "@/lib/domain/certificate/certificate-number";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { performerSignedOff } from "@/lib/domain/certificate/texts";
import { decideNotHeld } from "@/lib/domain/hold/decide-not-held";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideReviewable } from "@/lib/domain/review/decide-reviewable";
import { decideSignOffStanding, type SignOffStanding } from "@/lib/domain/review/may-decide";
import type { Actor } from "@/lib/domain/staff/actor";
import { defineOperation, type OperationContext } from "../operation";

type SignOffContext = OperationContext & { readonly actor: Extract<Actor, { kind: "staff" }> };
type Item = { readonly sensorId: string; readonly reviewedHash: string };

/** What was on the signatory's screen has to be what is there now, byte for byte. */
const demandReviewed = (review: ReviewRun, item: Item) => {
  const parts = demand(certificateParts(review, item.sensorId));
  const reviewed = demand(composeCertificate(parts, null));
  if (hex(contentHash(reviewed, sha256)) !== item.reviewedHash)
    throw new Refused({
      code: "changed-meanwhile",
      message: `What the certificate of ${parts.sensor.tag} would say has changed since you opened it. Nothing was signed off; reload and look again.`,
    });
  return parts;
};

const signOne = async (
  { actor, now, tx }: SignOffContext,
  review: ReviewRun,
  standing: SignOffStanding,
  item: Item,
) => {
  const sensor = review.sensors.find((candidate) => candidate.id === item.sensorId);
  if (review.certificates.some((certificate) => certificate.sensorId === item.sensorId))
    throw new Refused({
      code: "wrong-state",
      message: `${sensor?.tag} already has its certificate from this run.`,
    });
  const parts = demandReviewed(review, item);
  const year = now.getUTCFullYear();
  const number = certificateNumber(year, await nextNumber(tx, `certificate-${year}`));
  const content = demand(
    composeCertificate(parts, {
      number,
      issuedOn: now.toISOString().slice(0, 10),
      signatory: { name: actor.name, role: "Signatory" },
      exception: standing.kind === "exception" ? performerSignedOff : "",
    }),
  );
  const hash = contentHash(content, sha256);
  const token = randomBytes(32).toString("base64url");
  const id = await insertCertificate(tx, {
    content,
    contentHash: hash,
    token,
    customerId: sensor!.customerId,
    orderId: sensor!.line.order.id,
    sensorId: item.sensorId,
    runId: review.run.id,
    evaluationId: review.evaluation!.id,
    signedById: actor.personId,
    signedAt: now,
  });
  await freezeChain(tx, id, now);
  const adopted = await adoptSigned(tx, {
    certificateId: id,
    content,
    signedById: actor.personId,
    signedAt: now,
  });
  await tx.reviewDecision.create({
    data: {
      runId: review.run.id,
      evaluationId: review.evaluation!.id,
      sensorId: item.sensorId,
      decision: "signed-off",
      exceptionReason: standing.kind === "exception" ? standing.reason : null,
      decidedById: actor.personId,
      decidedAt: now,
    },
  });
  const event = eventOf(certificateEvents.signedOff, id, {
    number,
    sensor: parts.sensor.tag,
    run: parts.run.number,
    evaluation: parts.evaluation.sequence,
    reviewedHash: item.reviewedHash,
    contentHash: hex(hash),
    exception: standing.kind === "exception",
  });
  return {
    certificate: { id, number, token, sensorId: item.sensorId },
    events: [
      event,
      ...(adopted ? [eventOf(calibrationEvents.adopted, adopted.equipmentId, adopted.payload)] : []),
    ],
  };
};

/**
 * Sign-off of some or all sensors of a submitted run: content, hash and gapless number of each certificate, in one
 * transaction with its audit event. All of them or none. The document is rendered after the commit.
 */
export const signOff = defineOperation({
  name: "certificate/sign-off",
  permission: "review.decide",
  input: z.strictObject({
    runId: z.uuid(),
    evaluationId: z.uuid(),
    items: z
      .array(z.strictObject({ sensorId: z.uuid(), reviewedHash: z.string().regex(/^[0-9a-f]{64}$/) }))
      .min(1, "Choose at least one sensor to sign off.")
      .refine(
        (items) => new Set(items.map((item) => item.sensorId)).size === items.length,
        "A sensor is named twice.",
      ),
    exceptionReason: z.string().trim().max(1000, "At most 1000 characters.").default(""),
  }),
  perform: async ({ actor, now, tx }, input) => {
    if (actor.kind !== "staff")
      throw new Refused({ code: "not-permitted", message: "A person has to sign off." });
    const locked = await lockRun(tx, input.runId);
    const review = locked ? await loadReviewRun(tx, input.runId) : null;
    if (!review?.evaluation) throw new Refused({ code: "not-found", message: "This run is not here." });
    demand(
      decideReviewable({
        runState: review.run.state,
        evaluationId: review.evaluation.id,
        seenEvaluationId: input.evaluationId,
      }),
    );
    const standing = demand(
      decideSignOffStanding({
        signatoryId: actor.personId,
        performerIds: review.performerIds,
        performerMaySignOff: review.laboratory.performerMaySignOff,
        exceptionReason: input.exceptionReason,
      }),
    );
    const sensorIds = input.items.map((item) => item.sensorId);
    demand(decideNotHeld(await holdsOf(tx, sensorIds), "signed off"));
    const signed = [];
    for (const item of input.items) signed.push(await signOne({ actor, now, tx }, review, standing, item));
    await setSensorState(tx, sensorIds, ["in-review"], "issued");
    const closing = await closeReview(tx, review, sensorIds);
    const events = [...signed.flatMap(({ events: own }) => own), ...closing];
    return {
      value: { runNumber: review.run.number, certificates: signed.map(({ certificate }) => certificate) },
      events: events as unknown as readonly [AuditEvent, ...AuditEvent[]],
    };
  },
});
