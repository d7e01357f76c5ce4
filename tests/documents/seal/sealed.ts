import { PDFDocument } from "pdf-lib";
import { attachFiles } from "@/lib/documents/certificate/attach";
import type { SealKeyMaterial } from "@/lib/documents/seal/key-material";
import { makeKey } from "@/lib/documents/seal/make-key";
import { ownAuthority } from "@/lib/documents/seal/own-authority";
import { readKey } from "@/lib/documents/seal/read-key";
import { sealPdf } from "@/lib/documents/seal/seal-pdf";
import { canonicalContent } from "@/lib/domain/certificate/content-hash";
import type { KeyList, ListedKey } from "@/lib/domain/seal/key-list";
import { sampleContent } from "../certificate/sample-content";

export const sealedOn = new Date("2026-03-02T09:00:00.000Z");

/** After the certificates of `keyOf` have ended. */
export const muchLater = new Date("2031-01-01T00:00:00.000Z");

export const content = new TextEncoder().encode(canonicalContent(sampleContent));

export const attachContent = (pdf: Uint8Array, bytes: Uint8Array): Promise<Uint8Array> => {
  const attached = { mediaType: "application/json", relationship: "Source", description: "Content" } as const;
  return attachFiles(pdf, [{ name: "content.json", bytes, ...attached }], sealedOn);
};

/** A short document with its content attached. */
export const unsealed = async (bytes: Uint8Array = content): Promise<Uint8Array> => {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.addPage([300, 200]).drawText("An invented certificate");
  return attachContent(await document.save({ useObjectStreams: false }), bytes);
};

export const keyOf = async (purpose: "seal" | "timestamp", at = sealedOn): Promise<SealKeyMaterial> =>
  readKey(await makeKey({ purpose, name: "Sample laboratory", at, passphrase: "p" }), "p");

export const listed = (
  { certificate, chain, facts }: SealKeyMaterial,
  purpose: ListedKey["purpose"],
  rest: Partial<ListedKey> = {},
): ListedKey => ({
  ...{ fingerprint: facts.fingerprint, purpose, origin: "self-issued" },
  ...{ algorithm: facts.algorithm, subject: facts.subject, ending: null },
  certificate: Buffer.from(certificate).toString("base64"),
  chain: chain.map((one) => Buffer.from(one).toString("base64")),
  notBefore: facts.notBefore.toISOString(),
  notAfter: facts.notAfter.toISOString(),
  takenUpAt: facts.notBefore.toISOString(),
  ...rest,
});

export const listOf = (...keys: readonly ListedKey[]): KeyList => ({
  ...{ format: "emfolio-key-list", version: 1, laboratory: "Sample laboratory" },
  ...{ issuedAt: sealedOn.toISOString(), keys: [...keys] },
});

/** Sealed under the laboratory's own timestamp, or under none. */
export const sealed = (
  pdf: Uint8Array,
  key: SealKeyMaterial,
  authority: SealKeyMaterial | null,
  at = sealedOn,
): Promise<Uint8Array> =>
  sealPdf(pdf, key, {
    ...{ at, reason: "Issued – in an invented laboratory", location: "Nowhere" },
    timestamp: authority && ownAuthority(authority, () => at),
  });

/** Where the container stands in a sealed file: from its < to after its >. */
export const containerOf = (file: Uint8Array): { readonly from: number; readonly to: number } => {
  const said = /\/ByteRange\s*\[\s*0\s+(\d+)\s+(\d+)/.exec(Buffer.from(file).toString("latin1"));
  return { from: Number(said?.[1]), to: Number(said?.[2]) };
};

/** The CMS of a sealed file, DER, without its padding, and the bytes it covers. */
export const partsOf = (file: Uint8Array) => {
  const { from, to } = containerOf(file);
  const padded = Buffer.from(Buffer.from(file.subarray(from + 1, to - 1)).toString("latin1"), "hex");
  const length = 4 + padded.readUInt16BE(2);
  return {
    cms: padded.subarray(0, length),
    covered: Buffer.concat([file.subarray(0, from), file.subarray(to)]),
  };
};

export const pem = (certificate: Uint8Array): string =>
  `-----BEGIN CERTIFICATE-----\n${Buffer.from(certificate).toString("base64")}\n-----END CERTIFICATE-----\n`;
