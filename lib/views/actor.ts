import { inScope } from "@/lib/data/in-scope";
import { actorOf, loadActivePerson } from "@/lib/data/staff/load-person";
import type { Actor } from "@/lib/domain/staff/actor";

/**
 * Who a session belongs to, read anew at each request. Null once the person is deactivated or their sessions were
 * ended. The one view without an actor: it finds out who the actor is.
 */
export const actorView = async (personId: string, sessionEpoch: number): Promise<Actor | null> => {
  const person = await inScope({ kind: "laboratory" }, (tx) => loadActivePerson(tx, personId, sessionEpoch));
  return person ? actorOf(person) : null;
};
