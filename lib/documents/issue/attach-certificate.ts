import { type AttachedFile, attachFiles } from "@/lib/documents/certificate/attach";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { canonicalContent } from "@/lib/domain/certificate/content-hash";

export type Attached = {
  /** The finished PDF, before its seal. */
  readonly pdf: Uint8Array;
  /** The DCC, as it lies in the PDF and stands beside it. */
  readonly dcc: Uint8Array | null;
};

/** What a certificate carries for machines, under the names that whoever checks it looks for. */
const filesOf = (content: CertificateContent, evidence: Uint8Array | null): readonly AttachedFile[] => [
  {
    name: "content.json",
    bytes: new TextEncoder().encode(canonicalContent(content)),
    mediaType: "application/json",
    relationship: "Source",
    description: "What this certificate says; its SHA-256 is the content hash printed on each page",
  },
  ...(evidence
    ? [
        {
          name: "evidence.json",
          bytes: evidence,
          mediaType: "application/json",
          relationship: "Data" as const,
          description: "The readings and inputs that the results of this certificate follow from",
        },
      ]
    : []),
];

/** The rendered document with its data in it. The same input gives the same bytes; what follows is the seal. */
export const attachCertificate = async (
  pdf: Uint8Array,
  {
    content,
    evidence,
    at,
  }: {
    readonly content: CertificateContent;
    /** Where it was ordered. */
    readonly evidence: Uint8Array | null;
    readonly at: Date;
  },
): Promise<Attached> => ({ pdf: await attachFiles(pdf, filesOf(content, evidence), at), dcc: null });
