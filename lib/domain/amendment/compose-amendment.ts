import { type CertificateContent, CertificateContent as Content } from "../certificate/content";
import type { CertificateIssue } from "../certificate/parts";
import { reviewedForm, unissued } from "../certificate/reviewed-form";
import { ok, type Result, refuse } from "../refusal";
import type { Corrections } from "./amendment";
import { applyCorrections } from "./apply-corrections";

type Amends = NonNullable<CertificateContent["amends"]>;

/** Number, date and signatory of the new one; before it is signed, what stands in their places. */
const issueOf = (issue: CertificateIssue | null) =>
  issue
    ? {
        number: issue.number,
        issuedOn: issue.issuedOn,
        authorisedBy: { ...issue.signatory, on: issue.issuedOn },
        ...(issue.authenticity ? { authenticity: issue.authenticity } : {}),
      }
    : unissued;

/**
 * ISO/IEC 17025:2017, 7.8.8.2, 7.8.8.3: a whole new document that names the earlier one, by number and by hash, and
 * says why. `said` is what the earlier one says, or what a new evaluation says; without `issue` it is the reviewed form.
 */
export const composeAmendment = (
  said: CertificateContent,
  amends: Amends,
  corrections: Corrections,
  issue: CertificateIssue | null,
): Result<CertificateContent> => {
  const { amends: _earlier, ...rest } = reviewedForm(said);
  const content = Content.safeParse({
    ...applyCorrections(rest, corrections),
    amends: { ...amends },
    ...issueOf(issue),
  });
  if (content.success) return ok(content.data);
  const first = content.error.issues[0];
  return refuse(
    "rule",
    `The new certificate cannot be composed: ${first?.path.join(".") ?? "content"} does not hold.`,
  );
};
