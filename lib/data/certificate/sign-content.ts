import { randomBytes } from "node:crypto";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { calibrationEvents } from "@/lib/domain/calibration/events";
import type { BundleMember } from "@/lib/domain/certificate/bundle";
import { certificateNumber } from "@/lib/domain/certificate/certificate-number";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import type { CertificateIssue } from "@/lib/domain/certificate/parts";
import { demand, type Result } from "@/lib/domain/refusal";
import { meanings } from "@/lib/domain/signing/meaning";
import { checkpointNow } from "../audit/checkpoint-now";
import { demandAuthorised } from "../authorisation/demand-authorised";
import { adoptSigned } from "../calibration/adopt-signed";
import { hex } from "../hex";
import type { Tx } from "../in-scope";
import { nextNumber } from "../number/next-number";
import { sha256 } from "../sha256";
import type { Signing } from "../signing/begin-signing";
import { insertSignature } from "../signing/signature-store";
import { freezeChain } from "../trace/freeze-chain";
import { authenticityOf } from "./authenticity-of";
import { enqueueIssue } from "./enqueue-issue";
import { insertCertificate } from "./insert-certificate";
import { insertParts } from "./insert-parts";

const meaning = "reviewed-and-authorised";

type ToSign = {
  /** Everything measured that it states: for whose signature it takes, and for its chain. */
  readonly members: readonly BundleMember[];
  readonly filedUnder: Pick<BundleMember, "sensorId" | "runId" | "evaluationId">;
  readonly customerId: string;
  readonly orderId: string;
  /** Lower-case hex: of what was on the screen. */
  readonly reviewedHash: string;
  /** Printed where the performer signed by the laboratory's policy; else empty. */
  readonly exception: string;
  readonly compose: (issue: CertificateIssue) => Result<CertificateContent>;
};

/**
 * A certificate comes to be, in the transaction of its sign-off: that this person may answer for it, the next number, the
 * content with its hash, the signature over it, the chain frozen with it, and the job that makes its files. Refused where
 * nobody authorised the person or the content cannot be composed.
 */
export const signContent = async (tx: Tx, signing: Signing, given: ToSign, now: Date) => {
  const { personId, printedName, actId, means, signingSessionId } = signing;
  const { customerId, orderId, members, reviewedHash } = given;
  const authorisation = await demandAuthorised(tx, personId, { members }, now);
  const year = now.getUTCFullYear();
  const number = certificateNumber(year, await nextNumber(tx, `certificate-${year}`));
  const token = randomBytes(32).toString("base64url");
  const content = demand(
    given.compose({
      number,
      issuedOn: now.toISOString().slice(0, 10),
      signatory: {
        ...{ name: printedName, role: "Signatory" },
        ...{ at: now.toISOString(), meaning: meanings[meaning] },
      },
      exception: given.exception,
      ...authenticityOf(token),
      ...(await checkpointNow(tx)),
    }),
  );
  const hash = contentHash(content, sha256);
  const signed = { signedById: personId, signedAt: now };
  const { sensorId, runId, evaluationId } = given.filedUnder;
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
  const further: readonly AuditEvent[] = adopted
    ? [eventOf(calibrationEvents.adopted, adopted.equipmentId, adopted.payload)]
    : [];
  return { id, number, token, content, contentHash: hex(hash), further };
};
