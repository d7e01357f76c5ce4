import { loadServicePolicy } from "@/lib/data/equipment/service-policy-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "./view";

/** What follows where equipment is overdue or in doubt: the laboratory's rule, and whether this person may change it. */
export const servicePolicyView = (actor: Actor) =>
  answer(actor, "laboratory.read", async (tx) => ({
    ...(await loadServicePolicy(tx)),
    mayChange: actor.kind !== "system" && may(actor.roles, "laboratory.configure"),
  }));
