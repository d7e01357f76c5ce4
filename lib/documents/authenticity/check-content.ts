import { PDFDocument } from "pdf-lib";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { sha256, toHex } from "./bytes";
import type { StepFinding } from "./findings";
import { readAttachments } from "./read-attachments";
import type { Attachment } from "./verdict";

export type CheckedContent = {
  readonly finding: StepFinding;
  readonly content: CertificateContent | null;
  readonly contentHash: string | null;
  readonly attachments: readonly Attachment[];
};

/** What the document carries for machines, and whether it is the document that was expected. */
export const checkContent = async (
  file: Uint8Array,
  expected: string | undefined,
): Promise<CheckedContent> => {
  const attachments = await attachmentsOf(file);
  const attached = attachments.find(({ name }) => name === "content.json");
  if (attached === undefined)
    return { finding: missing(expected), content: null, contentHash: null, attachments };
  const contentHash = toHex(await sha256(attached.bytes));
  const content = contentOf(attached.bytes);
  const finding = expected === undefined ? unasked(content) : compared(contentHash, expected);
  return { finding, content, contentHash, attachments };
};

async function attachmentsOf(file: Uint8Array): Promise<readonly Attachment[]> {
  try {
    return readAttachments(await PDFDocument.load(file, { updateMetadata: false }));
  } catch {
    return [];
  }
}

function contentOf(bytes: Uint8Array): CertificateContent | null {
  try {
    const parsed = CertificateContent.safeParse(JSON.parse(new TextDecoder().decode(bytes)));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

const key = "content";

function missing(expected: string | undefined): StepFinding {
  const text = "The file carries no content for machines that could be compared.";
  return expected === undefined
    ? { key, state: "unknown", text }
    : { key, state: "unknown", text, against: { verdict: "indeterminate", indication: "CONTENT_MISMATCH" } };
}

function unasked(content: CertificateContent | null): StepFinding {
  const text = content
    ? `It is certificate ${content.number}. Compare that with the paper or the address that you have.`
    : "The content for machines is in a form that is not known here.";
  return { key, state: content ? "passed" : "unknown", text };
}

function compared(contentHash: string, expected: string): StepFinding {
  if (contentHash === expected.toLowerCase())
    return { key, state: "passed", text: "Its content is the one that the address or the paper names." };
  return {
    ...{ key, state: "failed" },
    text: "This is another document than the one that the address or the paper names.",
    against: { verdict: "total-failed", indication: "OTHER_DOCUMENT" },
  };
}
