import { createHash } from "node:crypto";
import { attachFiles } from "@/lib/documents/certificate/attach";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { bilingual, short } from "./examples";

/** The hash of each of two documents, rendered and attached as at issue: run in a process of its own by a test. */
export const documentHashes = async (): Promise<readonly string[]> => {
  const hashes: string[] = [];
  for (const content of [short, bilingual] satisfies CertificateContent[]) {
    const bytes = new TextEncoder().encode(JSON.stringify(content));
    const what = { mediaType: "application/json", relationship: "Source", description: "Content" } as const;
    const pdf = await attachFiles(
      await renderCertificate(content, { draft: false }),
      [{ name: "content.json", bytes, ...what }],
      new Date("2026-10-16T08:30:00Z"),
    );
    hashes.push(createHash("sha256").update(pdf).digest("hex"));
  }
  return hashes;
};

if (process.argv[2] === "print") process.stdout.write(`${(await documentHashes()).join("\n")}\n`);
