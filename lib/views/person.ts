import { hasSecondFactor } from "@/lib/data/account/second-factor-store";
import { loadPerson } from "@/lib/data/staff/person-store";
import { isLocked } from "@/lib/domain/account/lock";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "./view";

export const personView = (actor: Actor, id: string, now: Date) =>
  answer(actor, "person.read", async (tx) => {
    const { customer, createdAt, lockedUntil, ...person } = found(await loadPerson(tx, id));
    return {
      ...person,
      customer: customer?.name ?? null,
      lockedUntil: isLocked(lockedUntil, now) ? (lockedUntil?.toISOString() ?? null) : null,
      hasSecondFactor: await hasSecondFactor(tx, person.id),
      createdAt: createdAt.toISOString(),
      isSelf: actor.kind !== "system" && actor.personId === person.id,
    };
  });
