import { randomBytes } from "node:crypto";
import { z } from "zod";
import { demandAuthorised } from "@/lib/data/authorisation/demand-authorised";
import { adoptSigned } from "@/lib/data/calibration/adopt-signed";
import { authenticityOf } from "@/lib/data/certificate/authenticity-of";
import { enqueueIssue } from "@/lib/data/certificate/enqueue-issue";
import { insertCertificate } from "@/lib/data/certificate/insert-certificate";
import { insertParts } from "@/lib/data/certificate/insert-parts";
import { insertSignOffDecisions } from "@/lib/data/certificate/insert-sign-off-decisions";
import { hex } from "@/lib/data/hex";
import { holdsOf } from "@/lib/data/hold/holds-of";
import { nextNumber } from "@/lib/data/number/next-number";
import { closeReview } from "@/lib/data/review/close-review";
import { loadReviewRun, type ReviewRun } from "@/lib/data/review/load-review-run";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { sha256 } from "@/lib/data/sha256";
import { beginSigning, type Signing } from "@/lib/data/signing/begin-signing";
import { insertSignature } from "@/lib/data/signing/signature-store";
import { lockRun } from "@/lib/data/sql/lock-run";
import { freezeChain } from "@/lib/data/trace/freeze-chain";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { calibrationEvents } from "@/lib/domain/calibration/events";
import type { CertificateBundle } from "@/lib/domain/certificate/bundle";
import { certificateNumber } from "@/lib/domain/certificate/certificate-number";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { performerSignedOff } from "@/lib/domain/certificate/texts";
import { decideNotHeld } from "@/lib/domain/hold/decide-not-held";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideReviewable } from "@/lib/domain/review/decide-reviewable";
import { decideSignOffStanding, type SignOffStanding } from "@/lib/domain/review/may-decide";
import { SigningAct } from "@/lib/domain/signing/act";
import { meanings } from "@/lib/domain/signing/meaning";
import { defineOperation, type OperationContext } from "../operation";
import { proveAct } from "../signing/prove-act";
import { demandLookedAt } from "./demand-looked-at";
import { demandSignable, type Item, sensorsOnIt } from "./demand-signable";

type SignOffContext = Pick<OperationContext, "now" | "tx"> & { readonly signing: Signing };

const signOne = async (
  { signing, now, tx }: SignOffContext,
  review: ReviewRun,
  { bundle, item, standing }: { bundle: CertificateBundle; item: Item; standing: SignOffStanding },
) => {
  const { filedUnder } = bundle;
  const { personId, printedName, actId, means, signingSessionId } = signing;
  const meaning = "reviewed-and-authorised";
  const authorisation = await demandAuthorised(tx, personId, bundle, now);
  const year = now.getUTCFullYear();
  const number = certificateNumber(year, await nextNumber(tx, `certificate-${year}`));
  const token = randomBytes(32).toString("base64url");
  const content = demand(
    composeBundle(bundle, {
      number,
      issuedOn: now.toISOString().slice(0, 10),
      signatory: {
        ...{ name: printedName, role: "Signatory" },
        ...{ at: now.toISOString(), meaning: meanings[meaning] },
      },
      exception: standing.kind === "exception" ? performerSignedOff : "",
      ...authenticityOf(token),
    }),
  );
  const hash = contentHash(content, sha256);
  const signed = { signedById: personId, signedAt: now };
  const id = await insertCertificate(tx, {
    content,
    contentHash: hash,
    token,
    customerId: filedUnder.customerId,
    orderId: review.sensors.find(({ id: own }) => own === filedUnder.sensorId)!.line.order.id,
    sensorId: filedUnder.sensorId,
    runId: filedUnder.runId,
    evaluationId: filedUnder.evaluationId,
    ...signed,
  });
  await insertSignature(tx, {
    ...{ certificateId: id, customerId: filedUnder.customerId },
    ...{ personId, printedName, meaning, means, actId, signingSessionId },
    ...{ reviewedHash: item.reviewedHash, contentHash: hash },
    ...{ authorisationId: authorisation.id, signedAt: now },
  });
  await insertParts(tx, id, bundle.members);
  await enqueueIssue(tx, id);
  await freezeChain(tx, id, now);
  const adopted = await adoptSigned(tx, { certificateId: id, content, ...signed });
  await insertSignOffDecisions(tx, review, bundle, {
    exceptionReason: standing.kind === "exception" ? standing.reason : null,
    decidedById: personId,
    decidedAt: now,
  });
  const event = eventOf(certificateEvents.signedOff, id, {
    number,
    sensor: filedUnder.parts.sensor.tag,
    run: filedUnder.parts.run.number,
    evaluation: filedUnder.parts.evaluation.sequence,
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
      .array(
        z.strictObject({
          sensorId: z.uuid(),
          /** Further sensors on the same certificate, where the order asks for one a lot. */
          others: z.array(z.uuid()).max(200).default([]),
          reviewedHash: z.string().regex(/^[0-9a-f]{64}$/),
        }),
      )
      .min(1, "Choose at least one sensor to sign off.")
      .refine(
        (items) =>
          new Set(items.flatMap(sensorsOnIt)).size ===
          items.reduce((sum, { others }) => sum + 1 + others.length, 0),
        "A sensor is named twice.",
      ),
    exceptionReason: z.string().trim().max(1000, "At most 1000 characters.").default(""),
    act: SigningAct,
  }),
  first: ({ actor, clock }, { act }) => proveAct(actor, act, clock),
  perform: async ({ proved, now, tx }, input) => {
    const signing = await beginSigning(tx, proved, now);
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
    const sensorIds = input.items.flatMap(sensorsOnIt);
    demand(decideNotHeld(await holdsOf(tx, sensorIds), "signed off"));
    await demandLookedAt(tx, review, signing.personId, sensorIds);
    const signed = [];
    for (const item of input.items) {
      const bundle = await demandSignable(tx, review, item);
      const standing = demand(
        decideSignOffStanding({
          signatoryId: signing.personId,
          performerIds: bundle.performerIds,
          performerMaySignOff: review.laboratory.performerMaySignOff,
          exceptionReason: input.exceptionReason,
        }),
      );
      signed.push(await signOne({ signing, now, tx }, review, { bundle, item, standing }));
    }
    await setSensorState(tx, sensorIds, ["in-review"], "issued");
    const closing = await closeReview(tx, review, sensorIds);
    const events = [...signed.flatMap(({ events: own }) => own), ...closing];
    return {
      value: { runNumber: review.run.number, certificates: signed.map(({ certificate }) => certificate) },
      events: events as unknown as readonly [AuditEvent, ...AuditEvent[]],
    };
  },
});
