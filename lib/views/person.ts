import { loadPerson } from "@/lib/data/staff/person-store";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer, found } from "./view";

export const personView = (actor: Actor, id: string) =>
  answer(actor, "person.read", async (tx) => {
    const { customer, createdAt, ...person } = found(await loadPerson(tx, id));
    return {
      ...person,
      customer: customer?.name ?? null,
      createdAt: createdAt.toISOString(),
      isSelf: actor.kind !== "system" && actor.personId === person.id,
    };
  });
