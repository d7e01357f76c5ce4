import type { Tx } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { isRole } from "@/lib/domain/staff/roles";

type StoredPerson = {
  readonly id: string;
  readonly name: string;
  readonly customerId: string | null;
  readonly roles: readonly { readonly role: string }[];
};

/** People of a customer act for that customer only, whatever roles are stored beside it. */
export const actorOf = (person: StoredPerson): Actor => {
  const roles = person.roles.map((row) => row.role).filter(isRole);
  return person.customerId
    ? {
        kind: "customer",
        personId: person.id,
        name: person.name,
        roles: roles.filter((role) => role === "customer"),
        customerId: person.customerId,
      }
    : {
        kind: "staff",
        personId: person.id,
        name: person.name,
        roles: roles.filter((role) => role !== "customer"),
      };
};

export const loadActivePerson = (tx: Tx, personId: string, sessionEpoch: number) =>
  tx.person.findFirst({
    where: { id: personId, sessionEpoch, active: true },
    select: { id: true, name: true, customerId: true, roles: { select: { role: true } } },
  });
