import type { SealKeyMaterial } from "@/lib/documents/seal/key-material";
import { makeKey } from "@/lib/documents/seal/make-key";
import { ownAuthority } from "@/lib/documents/seal/own-authority";
import { readKey } from "@/lib/documents/seal/read-key";
import { sealPdf } from "@/lib/documents/seal/seal-pdf";
import type { KeyList } from "@/lib/domain/seal/key-list";

export type BenchKeys = {
  readonly list: KeyList;
  readonly seal: (pdf: Uint8Array) => Promise<Uint8Array>;
};

const passphrase = "bench";

const listed = ({ certificate, facts }: SealKeyMaterial, purpose: "seal" | "timestamp", at: Date) => ({
  ...{ fingerprint: facts.fingerprint, purpose, origin: "self-issued" as const },
  ...{ algorithm: facts.algorithm, subject: facts.subject, chain: [], ending: null },
  certificate: Buffer.from(certificate).toString("base64"),
  notBefore: facts.notBefore.toISOString(),
  notAfter: facts.notAfter.toISOString(),
  takenUpAt: at.toISOString(),
});

/** Keys as an installation makes them for itself, with its own timestamp authority. */
export const benchKeys = async (at: Date): Promise<BenchKeys> => {
  const open = async (purpose: "seal" | "timestamp") =>
    readKey(await makeKey({ purpose, name: "Bench laboratory", at, passphrase }), passphrase);
  const [key, clock] = [await open("seal"), await open("timestamp")];
  const options = { at, timestamp: ownAuthority(clock, () => at), reason: "Bench", location: "Bench" };
  return {
    seal: (pdf) => sealPdf(pdf, key, options),
    list: {
      ...{ format: "emfolio-key-list", version: 1, laboratory: "Bench laboratory" },
      issuedAt: at.toISOString(),
      keys: [listed(key, "seal", at), listed(clock, "timestamp", at)],
    },
  };
};
