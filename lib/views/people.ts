import { loadOpenInvitations } from "@/lib/data/account/access-link-store";
import { loadCustomers } from "@/lib/data/customer/customer-store";
import { loadPeople } from "@/lib/data/staff/person-store";
import { isLocked } from "@/lib/domain/account/lock";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

/** Everybody who signs in or once did; and the customers somebody can be added to. */
export const peopleView = (actor: Actor, now: Date) =>
  answer(actor, "person.read", async (tx) => ({
    people: (await loadPeople(tx)).map((person) => ({
      id: person.id,
      name: person.name,
      email: person.email,
      roles: person.roles,
      customer: person.customer?.name ?? null,
      active: person.active,
      isLocked: isLocked(person.lockedUntil, now),
    })),
    invitations: (await loadOpenInvitations(tx, now)).map(({ expiresAt, madeAt: _, ...invitation }) => ({
      ...invitation,
      expiresAt: expiresAt.toISOString(),
    })),
    customers: (await loadCustomers(tx)).map(({ id, name }) => ({ id, name })),
  }));
