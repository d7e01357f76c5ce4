import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { loadSealKeys } from "@/lib/data/seal-key/seal-key-store";
import type { FileVerdict, StepKey } from "@/lib/documents/authenticity/verdict";
import { mediaTypes } from "@/lib/domain/certificate/media-types";
import type { KeyList } from "@/lib/domain/seal/key-list";
import { sealKeysView } from "@/lib/views/seal-keys";
import { keyEndingFact, sealKeyFact } from "./facts";
import { type Makers, makers } from "./makers";
import { Broken, counted, type Facts, laboratory } from "./step";

/** What time and the laboratory may change: a certificate runs out, a key is given up, an authority was an outside one. */
const mayChange: readonly StepKey[] = ["timestamp", "validity", "revocation"];

const wrongWith = ({ steps }: FileVerdict): string | undefined =>
  steps.find(({ key, state }) => state !== "passed" && !mayChange.includes(key))?.text;

const demandSeal = async (certificateId: string, keys: KeyList, { check }: Makers): Promise<void> => {
  const { number, contentHash, files } = await inScope(laboratory, (tx) =>
    tx.certificate.findUniqueOrThrow({
      where: { id: certificateId },
      select: { number: true, contentHash: true, files: { where: { mediaType: mediaTypes.pdf } } },
    }),
  );
  const record = `certificate ${number}`;
  for (const { bytes, sealFingerprint } of files) {
    if (sealFingerprint === null) continue;
    const given = { keys, now: new Date(), contentHash: hex(contentHash) };
    const verdict = await check(bytes, given);
    const wrong = wrongWith(verdict);
    if (wrong !== undefined) throw new Broken(record, `its seal does not hold: ${wrong}`);
    if (verdict.fingerprint !== sealFingerprint)
      throw new Broken(record, "it is sealed by another key than the one it is said to be sealed by");
  }
};

/** The list itself: when each key was taken up and ended, the log tells too. */
const noteKeys = async (facts: Facts): Promise<void> => {
  for (const { fingerprint, purpose, endings } of await inScope(laboratory, loadSealKeys)) {
    facts.set(...sealKeyFact(fingerprint, purpose));
    for (const { kind, effectiveAt } of endings)
      facts.set(...keyEndingFact(fingerprint, kind, kind === "revoked" ? effectiveAt.toISOString() : ""));
  }
};

/** Checks each sealed document as whoever holds it would, against the laboratory's own list of keys. */
export const rederiveSeals = async (facts: Facts, tools: Makers = makers): Promise<string> => {
  await noteKeys(facts);
  const sealed = await inScope(laboratory, (tx) =>
    tx.certificateFile.findMany({
      where: { sealFingerprint: { not: null } },
      select: { certificateId: true },
      orderBy: { certificateId: "asc" },
    }),
  );
  if (sealed.length === 0) return "no document is sealed";
  const keys = await sealKeysView(new Date());
  for (const { certificateId } of sealed) await demandSeal(certificateId, keys, tools);
  return `${counted(sealed.length, "sealed document")} held against ${counted(keys.keys.length, "key")}`;
};
