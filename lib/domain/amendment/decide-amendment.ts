import type { CertificateContent } from "../certificate/content";
import { canonicalContent } from "../certificate/content-hash";
import { hasEnded, type Standing, standingSentence } from "../certificate/standing";
import { ok, type Result, refuse } from "../refusal";
import { type AmendmentKind, type Corrections, correctedFields } from "./amendment";
import { applyCorrections } from "./apply-corrections";

/**
 * Only a certificate that stands can be followed or withdrawn, and one that is out: what nobody holds needs neither,
 * unless its making failed. That may be for good, and its number must not stay without an answer.
 */
export const decideStands = (number: string, standing: Standing, failures: number): Result<null> => {
  if (standing.kind === "pending" && failures === 0)
    return refuse(
      "wrong-state",
      `${number} is still being made. Wait until its document is there; nothing was changed.`,
    );
  return hasEnded(standing)
    ? refuse("wrong-state", `${standingSentence(number, standing)} Nothing was changed.`)
    : ok(null);
};

/** What is asked for has to change something, and one thing at a time. */
export const decideAsk = (given: {
  readonly content: CertificateContent;
  readonly standing: Standing;
  /** How often its making failed. */
  readonly failures: number;
  readonly isAskedAlready: boolean;
  readonly kind: AmendmentKind;
  readonly corrections: Corrections;
}): Result<null> => {
  const { content, corrections, kind, standing } = given;
  const stands = decideStands(content.number, standing, given.failures);
  if (!stands.ok) return stands;
  if (given.isAskedAlready)
    return refuse(
      "wrong-state",
      `Something is asked for ${content.number} already and waits for a signatory. Drop it first; nothing was changed.`,
    );
  if (kind === "replacement") return ok(null);
  if (correctedFields(corrections).length === 0)
    return refuse("invalid", "An amendment corrects something. Nothing was changed.", {
      remark: "Type what is to be said otherwise, in one of the fields.",
    });
  const corrected = applyCorrections(content, corrections);
  if (corrections.receivedOn && corrected.receivedOn > corrected.performedFrom)
    return refuse("invalid", "Nothing was asked for.", {
      "corrections.receivedOn": `It was measured from ${corrected.performedFrom} on: it was received by then.`,
    });
  return canonicalContent(corrected) === canonicalContent(content)
    ? refuse("invalid", "The certificate says this already. Nothing was changed.", {
        "corrections.remark": "What you typed is what the certificate says now.",
      })
    : ok(null);
};

/** 7.8.8: reviewed and released like the first one, by a signatory who did not ask for it. */
export const decideAmendmentSigner = (given: {
  readonly askedById: string;
  readonly signatoryId: string;
}): Result<null> =>
  given.askedById === given.signatoryId
    ? refuse("rule", "You asked for this yourself. Another signatory signs it; nothing was changed.")
    : ok(null);

/** A replacement states results of a later evaluation than the one it replaces. */
export const decideReplaceable = (given: {
  readonly run: string;
  readonly evaluation: number;
  readonly latest: number;
}): Result<null> =>
  given.latest > given.evaluation
    ? ok(null)
    : refuse(
        "rule",
        `Run ${given.run} was not evaluated again since this certificate: a replacement states new results. Evaluate it again, or ask for an amendment.`,
      );
