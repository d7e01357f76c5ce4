import { inSnapshot } from "@/lib/data/in-scope";
import { loadSealKeys } from "@/lib/data/seal-key/seal-key-store";
import { derSequences } from "@/lib/domain/authenticity/der-sequences";
import { composeKeyList } from "@/lib/domain/seal/compose-key-list";
import type { KeyList } from "@/lib/domain/seal/key-list";

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString("base64");

/** The laboratory's keys, for everybody: certificates only. Whoever asks has no actor. */
export const sealKeysView = (now: Date): Promise<KeyList> =>
  inSnapshot({ kind: "laboratory" }, async (tx) => {
    const laboratory = await tx.laboratory.findFirstOrThrow({ select: { name: true } });
    const keys = (await loadSealKeys(tx)).map(({ certificateDer, chainDer, ...key }) => ({
      ...key,
      certificate: certificateDer,
      chain: derSequences(chainDer),
    }));
    return composeKeyList(laboratory.name, keys, now, base64);
  });
