import { inScope } from "@/lib/data/in-scope";
import { derSequences } from "@/lib/domain/authenticity/der-sequences";
import { KeyList } from "@/lib/domain/seal/key-list";

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString("base64");

/** The laboratory's keys, for everybody: certificates only. Whoever asks has no actor. */
export const sealKeysView = (now: Date): Promise<KeyList> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const laboratory = await tx.laboratory.findFirstOrThrow({ select: { name: true } });
    const rows = await tx.sealKey.findMany({
      include: { ending: true },
      orderBy: [{ takenUpAt: "asc" }, { fingerprint: "asc" }],
    });
    return KeyList.parse({
      format: "emfolio-key-list",
      version: 1,
      laboratory: laboratory.name,
      issuedAt: now.toISOString(),
      keys: rows.map(({ ending, ...key }) => ({
        fingerprint: key.fingerprint,
        purpose: key.purpose,
        origin: key.origin,
        algorithm: key.algorithm,
        subject: key.subject,
        certificate: base64(key.certificateDer),
        chain: derSequences(key.chainDer).map(base64),
        notBefore: key.notBefore.toISOString(),
        notAfter: key.notAfter.toISOString(),
        takenUpAt: key.takenUpAt.toISOString(),
        ending: ending && {
          kind: ending.kind,
          reason: ending.reason,
          effectiveAt: ending.effectiveAt.toISOString(),
        },
      })),
    });
  });
