import type { CertificateRow } from "../certificate/content";

/** In the certificate's words: a result outside the scope is marked wherever it is reported, in a table as well. */
export const scopeWords = (scope: CertificateRow["scope"]): string =>
  scope === undefined
    ? "not stated"
    : `${scope === "inside" ? "within" : "outside"} the scope of accreditation`;
