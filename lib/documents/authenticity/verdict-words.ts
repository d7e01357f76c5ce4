import type { FileVerdict, Step } from "./verdict";
import type { WholeVerdict } from "./whole-verdict";

const verdicts = {
  "total-passed": "TOTAL-PASSED",
  "total-failed": "TOTAL-FAILED",
  indeterminate: "INDETERMINATE",
} as const;

const states: Readonly<Record<Step["state"], string>> = {
  passed: "Passed",
  failed: "Failed",
  unknown: "Not known",
  skipped: "Not looked at",
};

const minute = (at: Date): string => `${at.toISOString().slice(0, 16).replace("T", " ")} UTC`;

const origins = {
  "self-issued":
    "The laboratory made this key itself, and nobody else vouches for it. Compare this fingerprint with the one the laboratory gave you:",
  file: "The seal’s key is on the laboratory’s list. Its fingerprint:",
  authority: "The seal’s key is on the laboratory’s list. Its fingerprint:",
} as const;

const keyWords = ({ sealKey }: WholeVerdict, fingerprint: string) => ({
  text: sealKey
    ? origins[sealKey.origin]
    : "The seal’s key is not on this list of the laboratory’s keys. Its fingerprint:",
  fingerprint,
});

/** What page, command and offline page say of a checked file, in the same words. */
export const verdictWords = (whole: WholeVerdict, file: FileVerdict) => ({
  /** ETSI EN 319 102-1, 5.1.3; of the seal alone, not of how the certificate stands today. */
  formal:
    file.indication === "NOT_THE_PDF"
      ? "not checked, because the seal is on the PDF."
      : `its seal is ${verdicts[file.verdict]}${file.verdict === "total-passed" ? "" : ` (${file.indication})`} in the words of EN 319 102-1.`,
  states,
  /** With the fingerprint; not of a file that failed, whose words about its key mean nothing. */
  key:
    file.verdict === "total-failed" || file.fingerprint === null ? null : keyWords(whole, file.fingerprint),
  /** Only of a file that may be believed. */
  facts:
    file.verdict === "total-passed" && file.content
      ? [
          { label: "Certificate", value: file.content.number },
          { label: "Laboratory", value: file.content.laboratory.name },
          { label: "Customer", value: file.content.customer.name },
          { label: "Item", value: `${file.content.item.serial}, type ${file.content.item.typeLetter}` },
          { label: "Issued on", value: file.content.issuedOn },
          {
            label: file.timestampedAt ? "Timestamped" : "Sealed, by its own clock",
            value: file.timestampedAt
              ? minute(file.timestampedAt)
              : file.sealedAt
                ? minute(file.sealedAt)
                : "not said",
          },
        ]
      : [],
});
