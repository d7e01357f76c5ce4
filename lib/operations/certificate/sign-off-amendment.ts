import { randomBytes } from "node:crypto";
import { z } from "zod";
import { insertAmendmentDecision } from "@/lib/data/amendment/amendment-store";
import { type Amended, loadAmended } from "@/lib/data/amendment/load-amended";
import type { CertificateRow } from "@/lib/data/amendment/load-measured";
import { demandAuthorised } from "@/lib/data/authorisation/demand-authorised";
import { adoptSigned } from "@/lib/data/calibration/adopt-signed";
import { authenticityOf } from "@/lib/data/certificate/authenticity-of";
import { enqueueIssue } from "@/lib/data/certificate/enqueue-issue";
import { insertCertificate } from "@/lib/data/certificate/insert-certificate";
import { insertParts } from "@/lib/data/certificate/insert-parts";
import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { nextNumber } from "@/lib/data/number/next-number";
import { sha256 } from "@/lib/data/sha256";
import { beginSigning, type Signing } from "@/lib/data/signing/begin-signing";
import { insertSignature } from "@/lib/data/signing/signature-store";
import { freezeChain } from "@/lib/data/trace/freeze-chain";
import { decideAmendmentSigner, decideStands } from "@/lib/domain/amendment/decide-amendment";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { calibrationEvents } from "@/lib/domain/calibration/events";
import { certificateNumber } from "@/lib/domain/certificate/certificate-number";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideSignOffStanding } from "@/lib/domain/review/may-decide";
import { SigningAct } from "@/lib/domain/signing/act";
import { meanings } from "@/lib/domain/signing/meaning";
import { defineOperation } from "../operation";
import { proveAct } from "../signing/prove-act";
import { demandAsked } from "./demand-asked";
import { endCertificate } from "./end-certificate";

const meaning = "reviewed-and-authorised";

/** What was on the signatory's screen has to be what would be signed now, byte for byte. */
const demandReviewed = (number: string, amended: Amended, reviewedHash: string): void => {
  if (hex(contentHash(demand(amended.compose(null)), sha256)) !== reviewedHash)
    throw new Refused({
      code: "changed-meanwhile",
      message: `What the certificate that follows ${number} would say has changed since you opened it. Nothing was signed off; reload and look again.`,
    });
};

type Given = { readonly signing: Signing; readonly now: Date; readonly reviewedHash: string };

/** A number of its own, the signature over its content, its chain, and the job that makes its files. */
const signSuccessor = async (
  tx: Tx,
  old: CertificateRow,
  amended: Amended,
  { signing, now, reviewedHash }: Given,
) => {
  const { personId, printedName, actId, means, signingSessionId } = signing;
  const { customerId, orderId } = old;
  const { members, filedUnder } = amended;
  const authorisation = await demandAuthorised(tx, personId, { members }, now);
  const year = now.getUTCFullYear();
  const number = certificateNumber(year, await nextNumber(tx, `certificate-${year}`));
  const token = randomBytes(32).toString("base64url");
  const content = demand(
    amended.compose({
      number,
      issuedOn: now.toISOString().slice(0, 10),
      signatory: {
        ...{ name: printedName, role: "Signatory" },
        ...{ at: now.toISOString(), meaning: meanings[meaning] },
      },
      exception: "",
      ...authenticityOf(token),
    }),
  );
  const hash = contentHash(content, sha256);
  const { sensorId, runId, evaluationId } = filedUnder;
  const signed = { signedById: personId, signedAt: now };
  const id = await insertCertificate(tx, {
    ...{ content, contentHash: hash, token, customerId, orderId, sensorId, runId, evaluationId, ...signed },
  });
  await insertSignature(tx, {
    ...{ certificateId: id, customerId, personId, printedName, meaning, means, actId, signingSessionId },
    ...{ reviewedHash, contentHash: hash, authorisationId: authorisation.id, signedAt: now },
  });
  await insertParts(tx, id, members);
  await enqueueIssue(tx, id);
  await freezeChain(tx, id, now);
  const adopted = await adoptSigned(tx, { certificateId: id, content, ...signed });
  const events = [
    eventOf(certificateEvents.successorSigned, id, {
      ...{ number, amends: old.number, evaluation: content.evidence.evaluation },
      ...{ reviewedHash, contentHash: hex(hash), exception: false },
    }),
    ...(adopted ? [eventOf(calibrationEvents.adopted, adopted.equipmentId, adopted.payload)] : []),
  ];
  return { id, number, token, events };
};

/**
 * ISO/IEC 17025 7.8.8: what was asked for becomes a certificate with a number of its own, by the same act of signing as
 * any other, and the earlier one ends with it: both in one transaction.
 */
export const signOffAmendment = defineOperation({
  name: "certificate/sign-off-amendment",
  permission: "review.decide",
  input: z.strictObject({
    amendmentId: z.uuid(),
    reviewedHash: z.string().regex(/^[0-9a-f]{64}$/),
    act: SigningAct,
  }),
  first: ({ actor, clock }, { act }) => proveAct(actor, act, clock),
  perform: async ({ proved, now, tx }, input) => {
    const signing = await beginSigning(tx, proved, now);
    const { personId } = signing;
    const { amendment, certificate: old, standing } = await demandAsked(tx, input.amendmentId);
    demand(decideStands(old.number, standing));
    demand(decideAmendmentSigner({ askedById: amendment.askedById, signatoryId: personId }));
    const amended = demand(await loadAmended(tx, old, amendment));
    const { performerIds } = amended;
    // New results are reviewed by somebody who did not make them; no policy sets that aside here.
    const independent = { performerMaySignOff: false, exceptionReason: "" };
    demand(decideSignOffStanding({ signatoryId: personId, performerIds, ...independent }));
    demandReviewed(old.number, amended, input.reviewedHash);
    const successor = await signSuccessor(tx, old, amended, {
      ...{ signing, now, reviewedHash: input.reviewedHash },
    });
    const by = { decidedById: personId, decidedAt: now };
    await insertAmendmentDecision(tx, {
      ...{ amendmentId: amendment.id, customerId: old.customerId, outcome: "signed-off", reason: "", ...by },
    });
    const kind = amendment.kind === "amendment" ? "amended" : "replaced";
    const ended = await endCertificate(tx, old, { kind, reason: amendment.reason, successor, ...by });
    const events = [...successor.events, ...ended];
    return {
      value: { number: successor.number, token: successor.token, amends: old.number },
      events: events as unknown as readonly [AuditEvent, ...AuditEvent[]],
    };
  },
});
