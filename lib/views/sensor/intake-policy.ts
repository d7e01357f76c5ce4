import { loadIntakePolicy } from "@/lib/data/intake/intake-policy-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "../view";

/** The limits of intake, and whether this person may change them. */
export const intakePolicyView = (actor: Actor) =>
  answer(actor, "laboratory.read", async (tx) => ({
    ...(await loadIntakePolicy(tx)),
    mayChange: actor.kind === "system" || may(actor.roles, "laboratory.configure"),
  }));
