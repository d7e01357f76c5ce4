import type { Tx } from "@/lib/data/in-scope";
import { lockName } from "@/lib/data/sql/lock-name";

/** Attempts of one address, one request at a time: guesses sent together would each see no failure yet. */
export const loadAttemptsForUpdate = async (tx: Tx, email: string, since: Date) => {
  await lockName(tx, `sign-in ${email}`);
  return tx.signInAttempt.findMany({
    where: { email, at: { gte: since } },
    select: { succeeded: true, at: true },
    orderBy: { id: "desc" },
    take: 200,
  });
};

export const insertAttempt = (tx: Tx, email: string, succeeded: boolean, at: Date) =>
  tx.signInAttempt.create({ data: { email, succeeded, at } });

const credentials = {
  id: true,
  name: true,
  email: true,
  passwordHash: true,
  active: true,
  sessionEpoch: true,
  lockedUntil: true,
  customerId: true,
  roles: { select: { role: true } },
} as const;

/** The only place where a password's hash is read. */
export const loadCredentials = (tx: Tx, email: string) =>
  tx.person.findUnique({ where: { email }, select: credentials });

/** Of a person whose password was right a moment ago. */
export const loadCredentialsOf = (tx: Tx, id: string, sessionEpoch: number) =>
  tx.person.findFirst({ where: { id, sessionEpoch }, select: credentials });

export type Credentials = NonNullable<Awaited<ReturnType<typeof loadCredentials>>>;

export const loadPasswordHash = (tx: Tx, id: string) =>
  tx.person.findUnique({ where: { id }, select: { email: true, name: true, passwordHash: true } });
