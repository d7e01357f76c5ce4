import { createHash } from "node:crypto";
import type { Tx } from "@/lib/data/in-scope";
import { lockName } from "@/lib/data/sql/lock-name";

/** What the database knows of a link; who reads the database cannot use it. */
const hashOf = (token: string): string => createHash("sha256").update(token).digest("hex");

export const insertFirstAccess = (tx: Tx, token: string, expiresAt: Date) =>
  tx.firstAccess.create({ data: { tokenHash: hashOf(token), expiresAt } });

/** Good until it is used or its hour has come. */
export const loadOpenFirstAccess = (tx: Tx, token: string, now: Date) =>
  tx.firstAccess.findFirst({ where: { tokenHash: hashOf(token), usedAt: null, expiresAt: { gt: now } } });

/** True for the one request that takes it; nobody else passes until that one is done. */
export const takeFirstAccess = async (tx: Tx, token: string, now: Date): Promise<boolean> => {
  await lockName(tx, "first access");
  const taken = await tx.firstAccess.updateMany({
    where: { tokenHash: hashOf(token), usedAt: null, expiresAt: { gt: now } },
    data: { usedAt: now },
  });
  return taken.count === 1;
};
