import type { Tx } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerRoles, isRole } from "@/lib/domain/staff/roles";

type StoredPerson = {
  readonly id: string;
  readonly name: string;
  readonly customerId: string | null;
  readonly roles: readonly { readonly role: string }[];
};

const isOfCustomer = (role: string): boolean => (customerRoles as readonly string[]).includes(role);

/** People of a customer act for that customer only, whatever roles are stored beside it. */
export const actorOf = (person: StoredPerson): Actor => {
  const roles = person.roles.map((row) => row.role).filter(isRole);
  return person.customerId
    ? {
        kind: "customer",
        personId: person.id,
        name: person.name,
        roles: roles.filter(isOfCustomer),
        customerId: person.customerId,
      }
    : {
        kind: "staff",
        personId: person.id,
        name: person.name,
        roles: roles.filter((role) => !isOfCustomer(role)),
      };
};

export const loadActivePerson = (tx: Tx, personId: string, sessionEpoch: number) =>
  tx.person.findFirst({
    where: { id: personId, sessionEpoch, active: true },
    select: { id: true, name: true, customerId: true, roles: { select: { role: true } } },
  });
