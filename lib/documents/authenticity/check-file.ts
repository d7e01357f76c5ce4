import type { KeyList } from "@/lib/domain/seal/key-list";
import { copyOf } from "./bytes";
import { checkContent } from "./check-content";
import { checkSignature } from "./check-signature";
import { checkRevocation, checkTimestamp, checkValidity } from "./check-time";
import { concluded, type StepFinding } from "./findings";
import { type LocatedSeal, locateSeal } from "./locate-seal";
import type { FileVerdict } from "./verdict";
import { inWords } from "./words";

export type Given = {
  readonly keys: KeyList;
  readonly now: Date;
  /** Of the content that the document should carry, hex: what stands after # in the address of its QR code. */
  readonly contentHash?: string;
};

const nothing = {
  ...{ content: null, contentHash: null, sealedAt: null, timestampedAt: null, fingerprint: null },
  attachments: [],
} as const;

/**
 * Whether a file is, byte for byte, a document that the laboratory sealed: the same in a browser, in Node, on-line and
 * off. In the terms of ETSI EN 319 102-1. Never throws: whatever the file is, there is a verdict on it.
 */
export const checkFile = async (file: Uint8Array, given: Given): Promise<FileVerdict> => {
  if (globalThis.crypto?.subtle === undefined) return withoutCryptography();
  const bytes = copyOf(file);
  const { findings, seal } = locateSeal(bytes);
  if (seal === undefined) return { ...nothing, ...concluded(findings, "") };
  try {
    return await checkSealed(bytes, findings, seal, given);
  } catch {
    const text = "The seal cannot be read: it was damaged, or never was one.";
    const unreadable: StepFinding = {
      ...{ key: "signature", state: "failed", text },
      against: { verdict: "total-failed", indication: "FORMAT_FAILURE" },
    };
    return { ...nothing, sealedAt: seal.sealedAt, ...concluded([...findings, unreadable], "") };
  }
};

async function checkSealed(
  bytes: Uint8Array,
  located: readonly StepFinding[],
  seal: LocatedSeal,
  { keys, now, contentHash }: Given,
): Promise<FileVerdict> {
  const { sealedAt } = seal;
  const { findings, fingerprint, signature } = await checkSignature(seal, keys);
  const soFar = [...located, ...findings];
  // What was changed is not read: nothing of it may be shown as if the laboratory had said it.
  if (signature === undefined) return { ...nothing, sealedAt, fingerprint, ...concluded(soFar, "") };
  const { finding, timestampedAt, attested } = await checkTimestamp(signature.cms, keys, now);
  const { finding: said, ...content } = await checkContent(bytes, contentHash);
  const all = [
    ...soFar,
    finding,
    checkValidity(signature.certificate, attested, now),
    checkRevocation(signature.key, attested),
    said,
  ];
  return { ...content, sealedAt, timestampedAt, fingerprint, ...concluded(all, passed(keys, attested)) };
}

const passed = ({ laboratory }: KeyList, attested: Date | null): string =>
  `This file is, byte for byte, as ${laboratory} sealed it${attested ? `, by ${inWords(attested)}` : ""}.`;

function withoutCryptography(): FileVerdict {
  const text =
    "This browser does not check signatures here: open the page by https, or check the file with another program.";
  const against = { verdict: "indeterminate", indication: "NO_CRYPTOGRAPHY" } as const;
  return { ...nothing, ...concluded([{ key: "signature", state: "unknown", text, against }], "") };
}
