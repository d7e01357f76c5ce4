import { createHash, randomBytes } from "node:crypto";
import type { Tx } from "@/lib/data/in-scope";

type Purpose = "invitation" | "reset";

/** What the database knows of a link; who reads the database cannot use it. */
const hashOf = (token: string): string => createHash("sha256").update(token).digest("hex");

type NewLink = {
  readonly purpose: Purpose;
  readonly email: string;
  readonly name?: string;
  readonly roles?: readonly string[];
  readonly customerId?: string | null;
  readonly personId?: string | null;
  readonly madeById: string | null;
  readonly madeAt: Date;
  readonly expiresAt: Date;
};

/** The token goes into the mail and nowhere else: 32 random bytes. `id` is what the audit log and the lists call it. */
export const insertAccessLink = async (
  tx: Tx,
  { roles = [], ...link }: NewLink,
): Promise<{ readonly token: string; readonly id: string }> => {
  const token = randomBytes(32).toString("base64url");
  const tokenHash = hashOf(token);
  await tx.accessLink.create({ data: { ...link, tokenHash, roles: JSON.stringify(roles) } });
  return { token, id: tokenHash };
};

const open = (now: Date) => ({ usedAt: null, withdrawnAt: null, expiresAt: { gt: now } });

export const loadOpenLink = (tx: Tx, purpose: Purpose, token: string, now: Date) =>
  tx.accessLink.findFirst({ where: { tokenHash: hashOf(token), purpose, ...open(now) } });

/** The link for the one request that takes it; for everybody else, and later, null. */
export const takeLink = async (tx: Tx, purpose: Purpose, token: string, now: Date) => {
  const tokenHash = hashOf(token);
  const taken = await tx.accessLink.updateMany({
    where: { tokenHash, purpose, ...open(now) },
    data: { usedAt: now },
  });
  return taken.count === 1 ? tx.accessLink.findUniqueOrThrow({ where: { tokenHash } }) : null;
};

/** Those that lead to this address open nothing any more. */
export const withdrawLinksTo = (tx: Tx, purpose: Purpose, email: string, now: Date) =>
  tx.accessLink.updateMany({ where: { purpose, email, ...open(now) }, data: { withdrawnAt: now } });

/** One invitation by what the lists call it. */
export const loadInvitation = (tx: Tx, id: string, now: Date) =>
  tx.accessLink.findFirst({ where: { tokenHash: id, purpose: "invitation", ...open(now) } });

export const withdrawInvitation = async (tx: Tx, id: string, now: Date): Promise<boolean> => {
  const withdrawn = await tx.accessLink.updateMany({
    where: { tokenHash: id, purpose: "invitation", ...open(now) },
    data: { withdrawnAt: now },
  });
  return withdrawn.count === 1;
};

/** Invitations that wait; of one customer where told. The newest first. */
export const loadOpenInvitations = async (tx: Tx, now: Date, customerId?: string) =>
  (
    await tx.accessLink.findMany({
      where: { purpose: "invitation", ...open(now), ...(customerId ? { customerId } : {}) },
      orderBy: [{ madeAt: "desc" }, { tokenHash: "asc" }],
      take: 200,
    })
  ).map(({ tokenHash, name, email, roles, customerId: of, madeAt, expiresAt }) => ({
    ...{ id: tokenHash, name, email, customerId: of, madeAt, expiresAt },
    roles: JSON.parse(roles) as readonly string[],
  }));
