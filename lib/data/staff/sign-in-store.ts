import type { Tx } from "@/lib/data/in-scope";
import { lockName } from "@/lib/data/sql/lock-name";

/** Attempts of one address, one request at a time: guesses sent together would each see no failure yet. */
export const loadAttemptsForUpdate = async (tx: Tx, email: string, since: Date) => {
  await lockName(tx, `sign-in ${email}`);
  return tx.signInAttempt.findMany({
    where: { email, at: { gte: since } },
    select: { succeeded: true, at: true },
    orderBy: { id: "desc" },
    take: 50,
  });
};

export const insertAttempt = (tx: Tx, email: string, succeeded: boolean, at: Date) =>
  tx.signInAttempt.create({ data: { email, succeeded, at } });

/** The only place where a password's hash is read. */
export const loadCredentials = (tx: Tx, email: string) =>
  tx.person.findUnique({
    where: { email },
    select: { id: true, passwordHash: true, active: true, sessionEpoch: true, customerId: true },
  });

export const loadPasswordHash = (tx: Tx, id: string) =>
  tx.person.findUnique({ where: { id }, select: { email: true, passwordHash: true } });
