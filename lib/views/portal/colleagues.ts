import { loadOpenInvitations } from "@/lib/data/account/access-link-store";
import { inSnapshot } from "@/lib/data/in-scope";
import { loadColleagues } from "@/lib/data/portal/colleague-store";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerIdOf } from "@/lib/domain/staff/customer-id-of";
import { may } from "@/lib/domain/staff/permissions";

/**
 * The people of the actor's own customer, and whom they invited. Links are no customer's to read, not even by hash: this
 * asks in the laboratory's scope, for the actor's customer alone.
 */
export const portalColleaguesView = (actor: Actor, now: Date) => {
  if (actor.kind !== "customer" || !may(actor.roles, "portal.manage"))
    throw new Refused({ code: "not-permitted", message: "Your roles do not allow this page." });
  const customerId = customerIdOf(actor);
  return inSnapshot({ kind: "laboratory" }, async (tx) => ({
    people: (await loadColleagues(tx, customerId)).map((person) => ({
      ...person,
      isSelf: person.id === actor.personId,
      mayOrder: person.roles.includes("customer-orderer"),
      mayManage: person.roles.includes("customer-manager"),
    })),
    invitations: (await loadOpenInvitations(tx, now, customerId)).map((invitation) => ({
      id: invitation.id,
      email: invitation.email,
      name: invitation.name,
      expiresAt: invitation.expiresAt.toISOString(),
    })),
  }));
};

export type PortalColleague = Awaited<ReturnType<typeof portalColleaguesView>>["people"][number];
