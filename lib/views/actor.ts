import { loadAccountPolicy } from "@/lib/data/account/account-policy-store";
import { hasSecondFactor } from "@/lib/data/account/second-factor-store";
import { loadSession } from "@/lib/data/account/session-store";
import { inSnapshot } from "@/lib/data/in-scope";
import { actorOf, loadActivePerson } from "@/lib/data/staff/load-person";
import { needsSecondFactor } from "@/lib/domain/account/needs-second-factor";
import { isSessionOpen } from "@/lib/domain/account/session";
import type { Actor } from "@/lib/domain/staff/actor";

/** What a session cookie says of itself. */
export type HeldSession = {
  readonly personId: string;
  readonly sessionEpoch: number;
  readonly sessionId: string;
};

export type SeenActor = {
  readonly actor: Exclude<Actor, { kind: "system" }>;
  readonly lastSeenAt: Date;
};

/**
 * Who a session belongs to, read anew at each request. Null once the person is deactivated, their sessions were ended,
 * or this one was ended, is too old, or was left alone too long. Whoever must have a one-time code and has none comes
 * without any role: nothing is open to them but setting it up. The one view without an actor: it finds out who that is.
 */
export const actorView = (held: HeldSession, now: Date): Promise<SeenActor | null> =>
  inSnapshot({ kind: "laboratory" }, async (tx) => {
    const person = await loadActivePerson(tx, held.personId, held.sessionEpoch);
    const session = person && (await loadSession(tx, held.sessionId, held.personId));
    const policy = await loadAccountPolicy(tx);
    if (!person || !session || !isSessionOpen(session, policy, now)) return null;
    const actor = actorOf(person);
    if (actor.kind === "system") return null;
    const kind = session.kind === "bench" ? "bench" : "full";
    const known = { ...actor, session: kind, sessionId: session.id } as const;
    const lacks = needsSecondFactor(actor.roles, policy) && !(await hasSecondFactor(tx, person.id));
    return {
      actor: lacks ? { ...known, roles: [], mustSetUp: "second-factor" } : known,
      lastSeenAt: session.lastSeenAt,
    };
  });
