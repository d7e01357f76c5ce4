import { createHash } from "node:crypto";
import { attachFiles } from "@/lib/documents/certificate/attach";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { renderOffer } from "@/lib/documents/order/render-offer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { sampleOffer } from "../order/sample-offer";
import { bilingual, short } from "./examples";

const attached = async (content: CertificateContent): Promise<Uint8Array> => {
  const bytes = new TextEncoder().encode(JSON.stringify(content));
  const what = { mediaType: "application/json", relationship: "Source", description: "Content" } as const;
  return attachFiles(
    await renderCertificate(content, { draft: false }),
    [{ name: "content.json", bytes, ...what }],
    new Date("2026-10-16T08:30:00Z"),
  );
};

const documents: readonly (readonly [name: string, make: () => Promise<Uint8Array>])[] = [
  ["short", () => attached(short)],
  ["bilingual", () => attached(bilingual)],
  ["offer", () => renderOffer(sampleOffer())],
];

/** The hash of each of three documents, made one after the other; run in a process of its own by a test. */
export const documentHashes = async (isReversed: boolean): Promise<readonly string[]> => {
  const hashes: string[] = [];
  for (const [name, make] of isReversed ? documents.toReversed() : documents)
    hashes.push(
      `${name} ${createHash("sha256")
        .update(await make())
        .digest("hex")}`,
    );
  return hashes.toSorted();
};

if (process.argv[2] === "print") process.stdout.write(`${(await documentHashes(true)).join("\n")}\n`);
