import type { CertificateContent } from "./content";
import { onlyWhatIsSaid } from "./how-written";

/** Stands where a signed certificate has its number, date and signatory. */
export const unissued = {
  number: "not numbered yet",
  issuedOn: "not issued yet",
  authorisedBy: { name: "not signed off yet", role: "not signed off yet", on: "not signed off yet" },
} as const;

/**
 * The content as it was before sign-off: what the signatory saw. Taken from a signed certificate it gives the reviewed
 * hash again, so anyone who holds the content can check that what was signed is what was reviewed.
 */
export const reviewedForm = ({
  authenticity: _,
  log: __,
  ...content
}: CertificateContent): CertificateContent =>
  onlyWhatIsSaid({
    ...content,
    number: unissued.number,
    issuedOn: unissued.issuedOn,
    authorisedBy: { ...unissued.authorisedBy },
    evidence: { ...content.evidence, exception: "" },
  });
