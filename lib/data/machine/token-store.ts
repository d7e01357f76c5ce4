import type { Program } from "@/lib/domain/machine/program";
import { type TokenScope, tokenScopes } from "@/lib/domain/machine/scopes";
import type { Tx } from "../in-scope";

const scopesOf = (stored: string): TokenScope[] => {
  const held: unknown = JSON.parse(stored);
  return tokenScopes.filter((scope) => Array.isArray(held) && held.includes(scope));
};

export type NewToken = {
  readonly tokenHash: string;
  readonly beginning: string;
  readonly name: string;
  readonly customerId: string | null;
  readonly scopes: readonly TokenScope[];
  readonly madeById: string;
  readonly madeAt: Date;
  readonly expiresAt: Date;
};

export const insertToken = async (tx: Tx, token: NewToken): Promise<string> => {
  const data = { ...token, scopes: JSON.stringify(token.scopes) };
  const { id } = await tx.accessToken.create({ data, select: { id: true } });
  return id;
};

/** The program of a token in force, or null: unknown, revoked and past its date look the same. */
export const loadProgram = async (tx: Tx, tokenHash: string, now: Date): Promise<Program | null> => {
  const row = await tx.accessToken.findUnique({ where: { tokenHash } });
  if (!row || row.revokedAt || row.expiresAt <= now) return null;
  // Once a minute is enough to see whether a token is still in use.
  if (!row.lastUsedAt || now.getTime() - row.lastUsedAt.getTime() > 60_000)
    await tx.accessToken.update({ where: { id: row.id }, data: { lastUsedAt: now }, select: { id: true } });
  return { tokenId: row.id, customerId: row.customerId, scopes: scopesOf(row.scopes) };
};

export const loadToken = async (tx: Tx, id: string) => {
  const row = await tx.accessToken.findUnique({ where: { id } });
  return row && { ...row, scopes: scopesOf(row.scopes) };
};

export const loadTokens = async (tx: Tx, customerId: string | null) => {
  const rows = await tx.accessToken.findMany({
    where: { customerId },
    orderBy: { madeAt: "desc" },
    take: 200,
  });
  return rows.map((row) => ({ ...row, scopes: scopesOf(row.scopes) }));
};

export const revoke = async (tx: Tx, id: string, now: Date): Promise<void> => {
  await tx.accessToken.update({ where: { id }, data: { revokedAt: now }, select: { id: true } });
};
