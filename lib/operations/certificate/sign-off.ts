import { z } from "zod";
import { demandAuthorised } from "@/lib/data/authorisation/demand-authorised";
import { insertSignOffDecisions } from "@/lib/data/certificate/insert-sign-off-decisions";
import { signContent } from "@/lib/data/certificate/sign-content";
import { closeReview } from "@/lib/data/review/close-review";
import type { ReviewRun } from "@/lib/data/review/load-review-run";
import { setSensorState } from "@/lib/data/sensor/set-state";
import { beginSigning, type Signing } from "@/lib/data/signing/begin-signing";
import { lockRun } from "@/lib/data/sql/lock-run";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { SigningAct } from "@/lib/domain/signing/act";
import { seenWhole } from "@/lib/domain/typed-text";
import { defineOperation, type OperationContext } from "../operation";
import { proveAct } from "../signing/prove-act";
import { demandFormUnsigned } from "./demand-form-unsigned";
import { demandIssuable } from "./demand-issuable";
import { demandSignOff, exceptionOf, type ToSignOff } from "./demand-sign-off";
import { sensorsOnIt } from "./demand-signable";

type SignOffContext = Pick<OperationContext, "now" | "tx"> & { readonly signing: Signing };

const signOne = async ({ signing, now, tx }: SignOffContext, review: ReviewRun, toSign: ToSignOff) => {
  const { bundle, item, standing } = toSign;
  const { filedUnder, members } = bundle;
  const { reviewedHash } = item;
  const { line } = review.sensors.find(({ id }) => id === filedUnder.sensorId)!;
  const signed = await signContent(
    tx,
    signing,
    {
      ...{ members, filedUnder, customerId: filedUnder.customerId, orderId: line.order.id, reviewedHash },
      exception: exceptionOf(toSign),
      compose: (issue) => composeBundle(bundle, issue),
    },
    now,
  );
  await insertSignOffDecisions(tx, review, bundle, {
    exceptionReason: standing.kind === "exception" ? standing.reason : null,
    decidedById: signing.personId,
    decidedAt: now,
  });
  const { id, number, token, contentHash, further } = signed;
  const event = eventOf(certificateEvents.signedOff, id, {
    ...{ number, reviewedHash, contentHash, exception: standing.kind === "exception" },
    sensor: filedUnder.parts.sensor.tag,
    run: filedUnder.parts.run.number,
    evaluation: filedUnder.parts.evaluation.sequence,
  });
  return { certificate: { id, number, token, sensorId: item.sensorId }, events: [event, ...further] };
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
    exceptionReason: z
      .string()
      .trim()
      .max(1000, "At most 1000 characters.")
      .superRefine(seenWhole)
      .default(""),
    act: SigningAct,
  }),
  ready: async ({ actor, now, tx }, input) => {
    const { personId, name: signatory } = await demandFormUnsigned(tx, actor, input.act.actId);
    const { toSign } = await demandSignOff(tx, input, personId);
    for (const one of toSign) {
      await demandAuthorised(tx, personId, one.bundle, now);
      const given = { signatory, exception: exceptionOf(one), now };
      demandIssuable((issue) => composeBundle(one.bundle, issue), given);
    }
  },
  first: ({ actor, clock }, { act }) => proveAct(actor, act, clock),
  perform: async ({ proved, now, tx }, input) => {
    const signing = await beginSigning(tx, proved, now);
    await lockRun(tx, input.runId);
    const { review, toSign } = await demandSignOff(tx, input, signing.personId);
    const sensorIds = input.items.flatMap(sensorsOnIt);
    const signed = [];
    for (const one of toSign) signed.push(await signOne({ signing, now, tx }, review, one));
    await setSensorState(tx, sensorIds, ["in-review"], "issued");
    const closing = await closeReview(tx, review, sensorIds);
    const events = [...signed.flatMap(({ events: own }) => own), ...closing];
    return {
      value: { runNumber: review.run.number, certificates: signed.map(({ certificate }) => certificate) },
      events: events as unknown as readonly [AuditEvent, ...AuditEvent[]],
    };
  },
});
