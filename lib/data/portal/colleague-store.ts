import type { Tx } from "../in-scope";
import { lockName } from "../sql/lock-name";

/** Active managers of this customer other than this person; locked, or two could give up the right to each other at once. */
export const countOtherManagers = async (tx: Tx, customerId: string, personId: string): Promise<number> => {
  await lockName(tx, `managers of ${customerId}`);
  return tx.person.count({
    where: {
      customerId,
      active: true,
      id: { not: personId },
      roles: { some: { role: "customer-manager" } },
    },
  });
};

export const loadColleagues = async (tx: Tx, customerId: string) =>
  (
    await tx.person.findMany({
      where: { customerId },
      select: { id: true, name: true, email: true, active: true, version: true, roles: true },
      orderBy: [{ active: "desc" }, { name: "asc" }, { id: "asc" }],
    })
  ).map(({ roles, ...person }) => ({ ...person, roles: roles.map(({ role }) => role) }));
