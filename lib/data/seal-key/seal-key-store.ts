import { lockName } from "@/lib/data/sql/lock-name";
import type { Tx } from "../in-scope";

export type NewSealKey = {
  readonly fingerprint: string;
  readonly algorithm: string;
  readonly subject: string;
  /** DER. */
  readonly certificate: Uint8Array;
  /** DER, nearest first. */
  readonly chain: readonly Uint8Array[];
  readonly notBefore: Date;
  readonly notAfter: Date;
  readonly origin: string;
  readonly purpose: string;
  readonly takenUpAt: Date;
};

export type NewEnding = {
  readonly sealKeyId: string;
  readonly kind: "retired" | "revoked";
  readonly reason: string;
  readonly effectiveAt: Date;
  /** null: the platform. */
  readonly recordedById: string | null;
  readonly recordedAt: Date;
};

/** Two that take up a key take turns. */
export const lockSealKeys = (tx: Tx) => lockName(tx, "seal keys");

const withEndings = { endings: { orderBy: { recordedAt: "asc" } } } as const;

/** In the order in which they were taken up. */
export const loadSealKeys = (tx: Tx) =>
  tx.sealKey.findMany({
    include: withEndings,
    orderBy: [{ takenUpAt: "asc" }, { fingerprint: "asc" }],
  });

export const loadSealKey = (tx: Tx, fingerprint: string) =>
  tx.sealKey.findUnique({ where: { fingerprint }, include: withEndings });

export const loadSealKeyById = (tx: Tx, id: string) =>
  tx.sealKey.findUnique({ where: { id }, include: withEndings });

/** Those of one purpose that have not ended. */
export const loadKeysInUse = (tx: Tx, purpose: string) =>
  tx.sealKey.findMany({ where: { purpose, endings: { none: {} } } });

export const insertSealKey = async (tx: Tx, { certificate, chain, ...key }: NewSealKey): Promise<string> => {
  const { id } = await tx.sealKey.create({
    data: {
      ...key,
      certificateDer: Uint8Array.from(certificate),
      chainDer: Uint8Array.from(Buffer.concat(chain)),
    },
    select: { id: true },
  });
  return id;
};

export const insertEnding = async (tx: Tx, ending: NewEnding): Promise<void> => {
  await tx.sealKeyEnding.create({ data: ending });
};
