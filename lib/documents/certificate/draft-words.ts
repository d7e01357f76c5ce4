import type { CertificateContent } from "@/lib/domain/certificate/content";
import { unissued } from "@/lib/domain/certificate/reviewed-form";

/**
 * What a draft shows where a signed certificate has its number, day and signatory. The content keeps the words that its
 * hash is over; on the page they stand behind captions ("Issued", "End of certificate") and must be read with them.
 */
export const draftWords = (content: CertificateContent): CertificateContent =>
  content.number === unissued.number
    ? {
        ...content,
        number: "(draft)",
        issuedOn: "once signed off",
        authorisedBy: {
          name: "Not signed off yet",
          role: "The signatory’s name and role stand here once it is",
          on: "with the day",
        },
      }
    : content;
