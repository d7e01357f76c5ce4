import type { TextKey } from "./catalogue/catalogue";
import { type Draft, type Said, say } from "./catalogue/message";
import { english } from "./catalogue/settle";
import type { CertificateContent } from "./content";
import type { CertificateIssue } from "./parts";
import { unissued } from "./reviewed-form";

/** A text that came as English, as the catalogue's where it is that. */
export const known = (text: string, key: TextKey): Said => (text === english(say(key)) ? say(key) : text);

/** What stands only with `issue`, or in its place. */
export const issued = (
  issue: CertificateIssue | null,
): Draft<Pick<CertificateContent, "number" | "issuedOn" | "authorisedBy" | "authenticity" | "log">> =>
  issue
    ? {
        number: issue.number,
        issuedOn: issue.issuedOn,
        authorisedBy: {
          ...issue.signatory,
          role: known(issue.signatory.role, "role.signatory"),
          ...(issue.signatory.meaning
            ? { meaning: known(issue.signatory.meaning, "meaning.reviewed-and-authorised") }
            : {}),
          on: issue.issuedOn,
        },
        ...(issue.authenticity ? { authenticity: issue.authenticity } : {}),
        ...(issue.log ? { log: issue.log } : {}),
      }
    : unissued;
