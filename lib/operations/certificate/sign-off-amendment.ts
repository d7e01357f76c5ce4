import { z } from "zod";
import { insertAmendmentDecision } from "@/lib/data/amendment/amendment-store";
import { type Amended, loadAmended } from "@/lib/data/amendment/load-amended";
import type { CertificateRow } from "@/lib/data/amendment/load-measured";
import { demandAuthorised } from "@/lib/data/authorisation/demand-authorised";
import { signContent } from "@/lib/data/certificate/sign-content";
import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { beginSigning, type Signing } from "@/lib/data/signing/begin-signing";
import { decideAmendmentSigner, decideStands } from "@/lib/domain/amendment/decide-amendment";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideSignOffStanding } from "@/lib/domain/review/may-decide";
import { SigningAct } from "@/lib/domain/signing/act";
import { defineOperation } from "../operation";
import { proveAct } from "../signing/prove-act";
import { demandAsked } from "./demand-asked";
import { demandFormUnsigned } from "./demand-form-unsigned";
import { demandIssuable } from "./demand-issuable";
import { demandSuccessorLookedAt } from "./demand-successor-looked-at";
import { endCertificate } from "./end-certificate";

/** What was on the signatory's screen has to be what would be signed now, byte for byte. */
const demandReviewed = (number: string, amended: Amended, reviewedHash: string): void => {
  if (hex(contentHash(demand(amended.compose(null)), sha256)) !== reviewedHash)
    throw new Refused({
      code: "changed-meanwhile",
      message: `What the certificate that follows ${number} would say has changed since you opened it. Nothing was signed off; reload and look again.`,
    });
};

/** What was asked for may be signed by this person, as it was shown. */
const demandSignable = async (
  tx: Tx,
  { amendmentId, reviewedHash }: { readonly amendmentId: string; readonly reviewedHash: string },
  personId: string,
) => {
  const { amendment, certificate: old, failures, standing } = await demandAsked(tx, amendmentId);
  demand(decideStands(old.number, standing, failures));
  demand(decideAmendmentSigner({ askedById: amendment.askedById, signatoryId: personId }));
  const amended = demand(await loadAmended(tx, old, amendment));
  const { performerIds } = amended;
  // New results are reviewed by somebody who did not make them; no policy sets that aside here.
  const independent = { performerMaySignOff: false, exceptionReason: "" };
  demand(decideSignOffStanding({ signatoryId: personId, performerIds, ...independent }));
  demandReviewed(old.number, amended, reviewedHash);
  await demandSuccessorLookedAt(tx, old, amended, personId);
  return { amendment, amended, old };
};

/** The whole new document, with a number of its own. */
const signSuccessor = async (
  tx: Tx,
  old: CertificateRow,
  amended: Amended,
  { signing, now, reviewedHash }: { signing: Signing; now: Date; reviewedHash: string },
) => {
  const { customerId, orderId } = old;
  const { members, filedUnder, compose } = amended;
  const { id, number, token, content, contentHash, further } = await signContent(
    tx,
    signing,
    { members, filedUnder, customerId, orderId, reviewedHash, exception: "", compose },
    now,
  );
  const { evaluation } = content.evidence;
  const event = eventOf(certificateEvents.successorSigned, id, {
    ...{ number, amends: old.number, evaluation, reviewedHash, contentHash, exception: false },
  });
  return { id, number, token, events: [event, ...further] };
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
  ready: async ({ actor, now, tx }, input) => {
    const { personId, name: signatory } = await demandFormUnsigned(tx, actor, input.act.actId);
    const { amended } = await demandSignable(tx, input, personId);
    await demandAuthorised(tx, personId, amended, now);
    demandIssuable(amended.compose, { signatory, exception: "", now });
  },
  first: ({ actor, clock }, { act }) => proveAct(actor, act, clock),
  perform: async ({ proved, now, tx }, input) => {
    const signing = await beginSigning(tx, proved, now);
    const { personId } = signing;
    const { amendment, amended, old } = await demandSignable(tx, input, personId);
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
