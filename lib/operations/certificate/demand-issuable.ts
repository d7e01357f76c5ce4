import { authenticityOf } from "@/lib/data/certificate/authenticity-of";
import { hex } from "@/lib/data/hex";
import { sha256 } from "@/lib/data/sha256";
import { codeText, unreadableBecause } from "@/lib/documents/certificate/page-code";
import { ownDcc } from "@/lib/documents/issue/own-dcc";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import type { CertificateIssue } from "@/lib/domain/certificate/parts";
import { demand, Refused, type Result } from "@/lib/domain/refusal";
import { meanings } from "@/lib/domain/signing/meaning";

/** As long as the real ones: a number of this year, and 32 bytes as base64url. */
const longestNumber = 99_999;
const tokenToTry = "A".repeat(43);

/** As it would be issued now, under a number that is nobody's: to see whether its documents could be made. */
const tryIssue = (signatory: string, exception: string, now: Date): CertificateIssue => ({
  number: `C-${now.getUTCFullYear()}-${longestNumber}`,
  issuedOn: now.toISOString().slice(0, 10),
  signatory: {
    ...{ name: signatory, role: "Signatory" },
    ...{ at: now.toISOString(), meaning: meanings["reviewed-and-authorised"] },
  },
  exception,
  ...authenticityOf(tokenToTry),
});

const refused = (tag: string, reason: string): Refused =>
  new Refused({
    code: "rule",
    message: `The documents of the certificate of ${tag} could not be made: ${reason}. Nothing was signed.`,
  });

/**
 * What the job that makes the documents would refuse whenever it came to it is refused before anybody signs: a number
 * that nothing can be issued under is never given. The characters are held by the composing itself.
 */
export const demandIssuable = (
  compose: (issue: CertificateIssue) => Result<CertificateContent>,
  given: { readonly signatory: string; readonly exception: string; readonly now: Date },
): void => {
  const content = demand(compose(tryIssue(given.signatory, given.exception, given.now)));
  const { authenticity, item } = content;
  const code = authenticity && codeText(authenticity.address, hex(contentHash(content, sha256)));
  const unreadable = code === undefined ? null : unreadableBecause(code);
  if (unreadable !== null) throw refused(item.tag, unreadable);
  const { broken } = ownDcc(content);
  if (broken !== null)
    throw refused(item.tag, `its machine-readable form would not keep the rules of a DCC: ${broken}`);
};
