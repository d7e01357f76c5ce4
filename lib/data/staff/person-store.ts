import { endSessionsOf } from "@/lib/data/account/session-store";
import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { refuseDuplicate } from "@/lib/data/refuse-duplicate";
import { lockName } from "@/lib/data/sql/lock-name";
import { demandSaved } from "@/lib/data/versioned";

const emailTaken = "Somebody signs in with this address already.";

type NewPerson = {
  readonly name: string;
  readonly email: string;
  readonly passwordHash: string;
  readonly customerId: string | null;
  readonly roles: readonly string[];
};

export const insertPerson = async (tx: Tx, { roles, ...fields }: NewPerson): Promise<{ id: string }> => {
  const person = await refuseDuplicate(tx.person.create({ data: fields }), "email", emailTaken);
  await tx.personRole.createMany({ data: roles.map((role) => ({ personId: person.id, role })) });
  return person;
};

/** Without the password's hash: nobody who manages people needs it. */
const shown = {
  id: true,
  name: true,
  email: true,
  customerId: true,
  active: true,
  lockedUntil: true,
  createdAt: true,
  version: true,
  roles: { select: { role: true }, orderBy: { role: "asc" } },
  customer: { select: { name: true } },
} as const;

export const loadPerson = async (tx: Tx, id: string) => {
  const row = isUuid(id) ? await tx.person.findUnique({ where: { id }, select: shown }) : null;
  return row ? { ...row, roles: row.roles.map(({ role }) => role) } : null;
};

export const loadPeople = async (tx: Tx) =>
  (await tx.person.findMany({ select: shown, orderBy: [{ active: "desc" }, { name: "asc" }] })).map(
    (row) => ({
      ...row,
      roles: row.roles.map(({ role }) => role),
    }),
  );

type PersonFields = { readonly name?: string; readonly email?: string; readonly active?: boolean };

/** `sessionsEndAt` raises the epoch as well: what a session cookie says is then no longer true. */
export const savePerson = async (
  tx: Tx,
  id: string,
  version: number,
  fields: PersonFields,
  sessionsEndAt: Date | null,
): Promise<void> => {
  const save = tx.person.updateMany({
    where: { id, version },
    data: {
      ...fields,
      version: { increment: 1 },
      ...(sessionsEndAt ? { sessionEpoch: { increment: 1 } } : {}),
    },
  });
  demandSaved(await refuseDuplicate(save, "email", emailTaken));
  if (sessionsEndAt) await endSessionsOf(tx, id, sessionsEndAt);
};

export const replaceRoles = async (tx: Tx, personId: string, roles: readonly string[]): Promise<void> => {
  await tx.personRole.deleteMany({ where: { personId } });
  await tx.personRole.createMany({ data: roles.map((role) => ({ personId, role })) });
};

/** A new password ends every session. */
export const savePasswordHash = async (tx: Tx, id: string, passwordHash: string, now: Date) => {
  await tx.person.update({
    where: { id },
    data: { passwordHash, version: { increment: 1 }, sessionEpoch: { increment: 1 } },
    select: { id: true },
  });
  await endSessionsOf(tx, id, now);
};

export const saveLock = (tx: Tx, id: string, lockedUntil: Date | null) =>
  tx.person.update({ where: { id }, data: { lockedUntil }, select: { id: true } });

/** Active quality managers other than this person; locked, or two could give up the role to each other at once. */
export const countOtherQualityManagers = async (tx: Tx, personId: string): Promise<number> => {
  await lockName(tx, "quality managers");
  return tx.person.count({
    where: { active: true, id: { not: personId }, roles: { some: { role: "quality-manager" } } },
  });
};

export const countPeople = (tx: Tx): Promise<number> => tx.person.count();
