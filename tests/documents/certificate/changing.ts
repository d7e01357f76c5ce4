import type { CertificateContent } from "@/lib/domain/certificate/content";

/** The same as an amendment that says what it changes. */
export const changing = (content: CertificateContent): CertificateContent => ({
  ...content,
  amends: {
    kind: "amendment",
    number: "C-2026-0007",
    contentHash: "5f".repeat(32),
    reason: "Misread at intake.",
    changes: [
      { what: "Serial number", was: "HX-K-4417", now: "HX-K-4471" },
      { what: "Purchase order", was: "PO-1", now: "" },
    ],
  },
});
