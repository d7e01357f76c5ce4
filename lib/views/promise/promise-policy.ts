import { loadPromisePolicy } from "@/lib/data/promise/policy-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "../view";

/** What promised days are reckoned with, and whether this person may change it. */
export const promisePolicyView = (actor: Actor) =>
  answer(actor, "laboratory.read", async (tx) => ({
    ...(await loadPromisePolicy(tx)),
    mayChange: actor.kind === "system" || may(actor.roles, "laboratory.configure"),
  }));
