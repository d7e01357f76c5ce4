import { loadCustomers } from "@/lib/data/customer/customer-store";
import { loadPeople } from "@/lib/data/staff/person-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

/** Everybody who signs in or once did; and the customers somebody can be added to. */
export const peopleView = (actor: Actor) =>
  answer(actor, "person.read", async (tx) => ({
    people: (await loadPeople(tx)).map((person) => ({
      id: person.id,
      name: person.name,
      email: person.email,
      roles: person.roles,
      customer: person.customer?.name ?? null,
      active: person.active,
    })),
    customers: (await loadCustomers(tx)).map(({ id, name }) => ({ id, name })),
  }));
