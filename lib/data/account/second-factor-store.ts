import type { Tx } from "@/lib/data/in-scope";
import { seal, unseal } from "@/lib/data/seal";

const ownerOf = (id: string): string => `second-factor ${id}`;
const inForce = { confirmedAt: { not: null }, endedAt: null } as const;

export type StoredFactor = {
  readonly id: string;
  readonly secret: Uint8Array;
  readonly beganAt: Date;
};

const opened = (row: { id: string; sealedSecret: Uint8Array; beganAt: Date }): StoredFactor => ({
  id: row.id,
  secret: unseal(ownerOf(row.id), row.sealedSecret),
  beganAt: row.beganAt,
});

export const hasSecondFactor = async (tx: Tx, personId: string): Promise<boolean> =>
  (await tx.secondFactor.count({ where: { personId, ...inForce } })) > 0;

/** The one that counts, with its secret opened. */
export const loadSecondFactor = async (tx: Tx, personId: string): Promise<StoredFactor | null> => {
  const row = await tx.secondFactor.findFirst({ where: { personId, ...inForce } });
  return row ? opened(row) : null;
};

/** Begun since then and not confirmed: the newest. */
export const loadBegunFactor = async (
  tx: Tx,
  personId: string,
  since: Date,
): Promise<StoredFactor | null> => {
  const row = await tx.secondFactor.findFirst({
    where: { personId, confirmedAt: null, endedAt: null, beganAt: { gte: since } },
    orderBy: [{ beganAt: "desc" }, { id: "desc" }],
  });
  return row ? opened(row) : null;
};

/** A new secret, sealed for its row; what was begun before and never confirmed ends. */
export const insertFactor = async (
  tx: Tx,
  factor: { readonly id: string; readonly personId: string; readonly secret: Uint8Array },
  now: Date,
): Promise<void> => {
  await tx.secondFactor.updateMany({
    where: { personId: factor.personId, confirmedAt: null, endedAt: null },
    data: { endedAt: now },
  });
  const sealedSecret = new Uint8Array(seal(ownerOf(factor.id), factor.secret));
  await tx.secondFactor.create({
    data: { id: factor.id, personId: factor.personId, sealedSecret, beganAt: now },
  });
};

/** True for the one request that confirms it. */
export const confirmFactor = async (tx: Tx, id: string, step: number, now: Date): Promise<boolean> => {
  const confirmed = await tx.secondFactor.updateMany({
    where: { id, confirmedAt: null, endedAt: null },
    data: { confirmedAt: now, lastStep: BigInt(step) },
  });
  return confirmed.count === 1;
};

/**
 * Uses a time step up: true once for each step, also for those who ask at once. The row is locked by the UPDATE; whoever
 * comes second reads the step that the first one wrote.
 */
export const takeStep = async (tx: Tx, id: string, step: number): Promise<boolean> => {
  const taken = await tx.secondFactor.updateMany({
    where: { id, endedAt: null, lastStep: { lt: BigInt(step) } },
    data: { lastStep: BigInt(step) },
  });
  return taken.count === 1;
};

/** What was in force before another takes its place. */
export const endFactorsBut = (tx: Tx, personId: string, id: string, now: Date) =>
  tx.secondFactor.updateMany({ where: { personId, id: { not: id }, endedAt: null }, data: { endedAt: now } });

/** How many of this person's ended. */
export const endFactors = async (tx: Tx, personId: string, now: Date): Promise<number> =>
  (await tx.secondFactor.updateMany({ where: { personId, endedAt: null }, data: { endedAt: now } })).count;

export const insertRecoveryCodes = (tx: Tx, secondFactorId: string, hashes: readonly string[]) =>
  tx.recoveryCode.createMany({ data: hashes.map((codeHash) => ({ secondFactorId, codeHash })) });

/** True once for each code. */
export const takeRecoveryCode = async (
  tx: Tx,
  secondFactorId: string,
  codeHash: string,
  now: Date,
): Promise<boolean> => {
  const taken = await tx.recoveryCode.updateMany({
    where: { secondFactorId, codeHash, usedAt: null },
    data: { usedAt: now },
  });
  return taken.count === 1;
};

export const countRecoveryCodes = (tx: Tx, secondFactorId: string): Promise<number> =>
  tx.recoveryCode.count({ where: { secondFactorId, usedAt: null } });
