import { createHash } from "node:crypto";
import { type AttachedFile, attachFiles } from "@/lib/documents/certificate/attach";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { canonicalContent } from "@/lib/domain/certificate/content-hash";
import { evidenceSum, evidenceSumName } from "@/lib/domain/certificate/evidence-file/evidence-sum";
import { ownDcc } from "./own-dcc";

export type Attached = {
  /** The finished PDF, before its seal. */
  readonly pdf: Uint8Array;
  /** The DCC, as it lies in the PDF and stands beside it. */
  readonly dcc: Uint8Array;
};

type Evidence = { readonly bytes: Uint8Array; readonly isAttached: boolean };

const sha256 = (bytes: Uint8Array): Uint8Array => createHash("sha256").update(bytes).digest();

/** Ordered, the readings and inputs themselves; else which file they are, so that none can be put in its place. */
const evidenceOf = (number: string, { bytes, isAttached }: Evidence): AttachedFile =>
  isAttached
    ? {
        name: "evidence.json",
        bytes,
        mediaType: "application/json",
        relationship: "Data",
        description: "The readings and inputs that the results of this certificate follow from",
      }
    : {
        name: evidenceSumName,
        bytes: new TextEncoder().encode(evidenceSum(number, Buffer.from(sha256(bytes)).toString("hex"))),
        mediaType: "text/plain",
        relationship: "Supplement",
        description: "SHA-256 of the evidence file, which the customer downloads beside this certificate",
      };

/** What a certificate carries for machines, under the names that whoever checks it looks for. */
const filesOf = (
  content: CertificateContent,
  dcc: Uint8Array,
  evidence: Evidence,
): readonly AttachedFile[] => [
  {
    name: "content.json",
    bytes: new TextEncoder().encode(canonicalContent(content)),
    mediaType: "application/json",
    relationship: "Source",
    description: "What this certificate says; its SHA-256 is the content hash printed on each page",
  },
  {
    name: "dcc.xml",
    bytes: dcc,
    mediaType: "application/xml",
    relationship: "Alternative",
    description: "The same certificate for machines: a digital calibration certificate, DCC 3.3.0",
  },
  evidenceOf(content.number, evidence),
];

/** One that breaks a rule does not go out; asked before the signature already. */
const dccOf = (content: CertificateContent): Uint8Array => {
  const { xml, broken } = ownDcc(content);
  if (broken !== null) throw new Error(`The DCC does not hold: ${broken}`);
  return new TextEncoder().encode(xml);
};

/** The rendered document with its data in it. The same input gives the same bytes; what follows is the seal. */
export const attachCertificate = async (
  pdf: Uint8Array,
  {
    content,
    evidence,
    at,
  }: {
    readonly content: CertificateContent;
    readonly evidence: Evidence;
    readonly at: Date;
  },
): Promise<Attached> => {
  const dcc = dccOf(content);
  return { pdf: await attachFiles(pdf, filesOf(content, dcc, evidence), at), dcc };
};
