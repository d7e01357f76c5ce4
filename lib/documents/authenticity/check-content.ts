import { PDFDocument } from "pdf-lib";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { sha256, toHex } from "./bytes";
import type { StepFinding } from "./findings";
import { pageText } from "./page-text";
import { readAttachments } from "./read-attachments";
import type { Attachment } from "./verdict";

export type CheckedContent = {
  readonly finding: StepFinding;
  readonly content: CertificateContent | null;
  readonly contentHash: string | null;
  readonly attachments: readonly Attachment[];
};

/** What the document carries for machines, whether it is what its pages print, and what was expected. */
export const checkContent = async (
  file: Uint8Array,
  expected: string | undefined,
): Promise<CheckedContent> => {
  const { attachments, pages } = await readDocument(file);
  const attached = attachments.find(({ name }) => name === "content.json");
  if (attached === undefined)
    return { finding: missing(expected), content: null, contentHash: null, attachments };
  const contentHash = toHex(await sha256(attached.bytes));
  const content = contentOf(attached.bytes);
  const found = { content, contentHash, attachments };
  if (pages.some((text) => printsAnother(text, contentHash))) return { ...found, finding: contradicted };
  return { ...found, finding: expected === undefined ? unasked(content) : compared(contentHash, expected) };
};

async function readDocument(
  file: Uint8Array,
): Promise<{ readonly attachments: readonly Attachment[]; readonly pages: readonly string[] }> {
  try {
    const document = await PDFDocument.load(file, { updateMetadata: false });
    return { attachments: readAttachments(document), pages: document.getPages().map(pageText) };
  } catch {
    return { attachments: [], pages: [] };
  }
}

/** A page prints the content hash at its foot; beside its own it may name that of the document it amends. */
const printsAnother = (text: string, contentHash: string): boolean =>
  /[0-9a-f]{64}/.test(text) && !text.includes(contentHash);

const contradicted: StepFinding = {
  ...{ key: "content", state: "failed" },
  text: "The content for machines in this file is not the one that its pages print.",
  against: { verdict: "total-failed", indication: "CONTENT_MISMATCH" },
};

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
