import { createHash } from "node:crypto";
import { PDFDocument } from "pdf-lib";
import { attachFiles } from "@/lib/documents/certificate/attach";
import type { SealKeyMaterial } from "@/lib/documents/seal/key-material";
import { makeKey } from "@/lib/documents/seal/make-key";
import { ownAuthority } from "@/lib/documents/seal/own-authority";
import { readKey } from "@/lib/documents/seal/read-key";
import { sealPdf } from "@/lib/documents/seal/seal-pdf";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { canonicalContent } from "@/lib/domain/certificate/content-hash";
import type { KeyList } from "@/lib/domain/seal/key-list";
import { sampleContent } from "../certificate/sample-content";

export const sealedOn = new Date("2026-03-02T09:00:00Z");
export const sampleToken = "sample-token-".padEnd(43, "0");
export const sampleHost = "calibration.example";

export const sampleLog = { sequence: 4711, hash: "5a".repeat(32) };

export const sampleContentAt = (token: string): CertificateContent => ({
  ...sampleContent,
  authenticity: { address: `https://${sampleHost}/authenticity/${token}` },
  log: sampleLog,
});

const key = async (purpose: "seal" | "timestamp"): Promise<SealKeyMaterial> =>
  readKey(await makeKey({ purpose, name: "Sample laboratory", at: sealedOn, passphrase: "p" }), "p");

/** Keys made for one test, and the list that a laboratory would publish of them. */
export const makeKeys = async () => {
  const [seal, timestamp] = [await key("seal"), await key("timestamp")];
  const listed = ({ certificate, facts }: SealKeyMaterial, purpose: "seal" | "timestamp") => ({
    ...{ fingerprint: facts.fingerprint, purpose, origin: "self-issued" as const },
    ...{ algorithm: facts.algorithm, subject: facts.subject, chain: [], ending: null },
    certificate: Buffer.from(certificate).toString("base64"),
    notBefore: facts.notBefore.toISOString(),
    notAfter: facts.notAfter.toISOString(),
    takenUpAt: sealedOn.toISOString(),
  });
  const list: KeyList = {
    ...{ format: "emfolio-key-list", version: 1, laboratory: "Sample laboratory" },
    issuedAt: sealedOn.toISOString(),
    keys: [listed(seal, "seal"), listed(timestamp, "timestamp")],
  };
  return { seal, timestamp, list };
};

type Keys = Awaited<ReturnType<typeof makeKeys>>;

/** A short document with its content attached, sealed and timestamped. */
export const sealedSample = async ({ seal, timestamp }: Keys, content: CertificateContent) => {
  const bytes = new TextEncoder().encode(canonicalContent(content));
  const document = await PDFDocument.create();
  document.addPage().drawText(content.number);
  const attached = { mediaType: "application/json", relationship: "Source", description: "Content" } as const;
  const pdf = await attachFiles(
    await document.save(),
    [{ name: "content.json", bytes, ...attached }],
    sealedOn,
  );
  const authority = ownAuthority(timestamp, () => sealedOn);
  const options = { at: sealedOn, timestamp: authority, reason: "Released", location: "Sample" };
  return {
    file: await sealPdf(pdf, seal, options),
    contentHash: createHash("sha256").update(bytes).digest("hex"),
  };
};
