import type { Tx } from "@/lib/data/in-scope";
import { loadSecondFactor } from "../account/second-factor-store";
import { loadSession } from "../account/session-store";

const select = {
  id: true,
  name: true,
  email: true,
  passwordHash: true,
  active: true,
  lockedUntil: true,
  roles: { select: { role: true } },
} as const;

/** Whoever wants to sign, as the database has them now: not as the request says. */
export const loadSigner = async (tx: Tx, personId: string, personSessionId: string) => {
  const person = await tx.person.findUnique({ where: { id: personId }, select });
  if (!person) return null;
  const factor = await loadSecondFactor(tx, personId);
  return {
    ...person,
    roles: person.roles.map(({ role }) => role),
    session: await loadSession(tx, personSessionId, personId),
    factor,
    hasSecondFactor: factor !== null,
  };
};

export type LoadedSigner = NonNullable<Awaited<ReturnType<typeof loadSigner>>>;
