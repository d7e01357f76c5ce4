import { inScope } from "@/lib/data/in-scope";
import { loadLaboratory } from "@/lib/data/laboratory/laboratory-store";
import { loadSealKey, loadSealKeys } from "@/lib/data/seal-key/seal-key-store";
import { certificateFacts } from "@/lib/documents/authenticity/certificate-facts";
import { readTimestampToken } from "@/lib/documents/authenticity/timestamp-token";
import { type KeyFolder, type OpenedKey, openKey } from "@/lib/documents/seal/key-folder";
import type { SealKeyMaterial } from "@/lib/documents/seal/key-material";
import { ownAuthority } from "@/lib/documents/seal/own-authority";
import { sealPdf } from "@/lib/documents/seal/seal-pdf";
import { timestampClient } from "@/lib/documents/seal/timestamp-client";
import { derSequences } from "@/lib/domain/authenticity/der-sequences";
import { demand, Refused } from "@/lib/domain/refusal";
import { decideMaySeal } from "@/lib/domain/seal/decide-may-seal";
import type { KeyOrigin, KeyPurpose } from "@/lib/domain/seal/key-list";
import { keyState } from "@/lib/domain/seal/key-state";
import { type Clock, execute } from "../execute";
import { takeUpKey } from "./take-up";

const sealing = { kind: "system", name: "seal" } as const;

/** The wording in the seal itself. */
const reason = "Issued by the laboratory as signed off";

type Timestamp = (imprint: Uint8Array) => Promise<Uint8Array>;

/** Puts a certificate on the list of the laboratory's keys, unless it is there. */
const ensureTakenUp = async (
  purpose: KeyPurpose,
  origin: KeyOrigin,
  der: { readonly certificate: Uint8Array; readonly chain: readonly Uint8Array[] },
  clock: Clock,
): Promise<void> => {
  const { isSelfIssued: _, issuer: __, ...facts } = await certificateFacts(der.certificate);
  const known = await inScope({ kind: "laboratory" }, (tx) => loadSealKey(tx, facts.fingerprint));
  if (known) return;
  const key = {
    ...facts,
    purpose,
    origin,
    certificate: Uint8Array.from(der.certificate),
    chain: der.chain.map((one) => Uint8Array.from(one)),
  };
  try {
    await execute(takeUpKey, sealing, key, clock);
  } catch (error) {
    // Somebody else was first.
    if (!(error instanceof Refused && error.refusal.code === "wrong-state")) throw error;
  }
};

/** The installation's key of a purpose, on the list: its own is made anew in time before it ends, and after it ended. */
const openListed = async (keys: KeyFolder, purpose: KeyPurpose, clock: Clock): Promise<OpenedKey> => {
  const { laboratory, listed } = await inScope({ kind: "laboratory" }, async (tx) => ({
    laboratory: await loadLaboratory(tx),
    listed: await loadSealKeys(tx),
  }));
  const now = clock();
  const endingsOf = (fingerprint: string) =>
    listed.find((one) => one.fingerprint === fingerprint)?.endings ?? [];
  const opened = await openKey(keys, {
    ...{ purpose, now, name: laboratory?.name || "Laboratory" },
    mayUse: ({ facts }) => {
      const { notBefore, notAfter, fingerprint } = facts;
      return keyState({ notBefore, notAfter, endings: endingsOf(fingerprint) }, now).kind === "in-force";
    },
  });
  await ensureTakenUp(purpose, opened.origin, opened.material, clock);
  return opened;
};

/**
 * The key, if it may seal by what the list says at this moment. With the certificates above it as they are listed: a
 * file that was packed anew may bring others, and whoever checks holds the seal against the list.
 */
const demandMaySeal = async ({ material }: OpenedKey, clock: Clock): Promise<SealKeyMaterial> => {
  const { fingerprint } = material.facts;
  const row = await inScope({ kind: "laboratory" }, (tx) => loadSealKey(tx, fingerprint));
  if (!row) throw new Refused({ code: "not-found", message: "The seal's key is not on the list of keys." });
  demand(decideMaySeal(row, clock()));
  return { ...material, chain: derSequences(row.chainDer).map((one) => Uint8Array.from(one)) };
};

/** An outside authority, whose certificate is put on the list as it is met; or the laboratory's own. */
const timestampOf = async (keys: KeyFolder, clock: Clock): Promise<Timestamp> => {
  if (keys.timestampUrl === undefined)
    return ownAuthority((await openListed(keys, "timestamp", clock)).material, clock);
  const ask = timestampClient(keys.timestampUrl, clock);
  return async (imprint) => {
    const token = await ask(imprint);
    const { certificate } = await readTimestampToken(token, imprint);
    await ensureTakenUp("timestamp", "authority", { certificate, chain: [] }, clock);
    return token;
  };
};

export type SealedDocument = { readonly bytes: Uint8Array; readonly fingerprint: string };

/**
 * Seals finished documents with the installation's key, under a timestamp. The keys are opened anew for each, so that a
 * key that was exchanged, retired or revoked is exchanged, retired or revoked from the next document on.
 */
export const makeSealer =
  (keys: KeyFolder, clock: Clock) =>
  async (pdf: Uint8Array): Promise<SealedDocument> => {
    const material = await demandMaySeal(await openListed(keys, "seal", clock), clock);
    const timestamp = await timestampOf(keys, clock);
    const bytes = await sealPdf(pdf, material, { at: clock(), timestamp, reason, location: "" });
    return { bytes, fingerprint: material.facts.fingerprint };
  };

/**
 * Opens, and where need be makes and lists, the installation's keys before the first document; the seal's, or null where
 * the laboratory has no name yet that a key of its own could carry.
 */
export const installationKeys = async (keys: KeyFolder, clock: Clock): Promise<OpenedKey | null> => {
  const laboratory = await inScope({ kind: "laboratory" }, loadLaboratory);
  if (!laboratory) return null;
  if (keys.timestampUrl === undefined) await openListed(keys, "timestamp", clock);
  return openListed(keys, "seal", clock);
};
