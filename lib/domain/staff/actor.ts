import type { Role } from "./roles";

/** At the bench somebody records and does not sign (`bench.ts`). */
export type SessionKind = "full" | "bench";

/** The sign-in that an actor came by. Absent where nobody signed in: programs, seeds, tests. */
type OfSession = {
  readonly session?: SessionKind;
  readonly sessionId?: string;
  /** Nothing is open to them until they have set up what the laboratory asks for. */
  readonly mustSetUp?: "second-factor";
};

/** Who is asking. Read anew from the database at each request; never taken from the browser. */
export type Actor =
  | (OfSession & {
      readonly kind: "staff";
      readonly personId: string;
      readonly name: string;
      readonly roles: readonly Role[];
    })
  | (OfSession & {
      readonly kind: "customer";
      readonly personId: string;
      readonly name: string;
      readonly roles: readonly Role[];
      readonly customerId: string;
    })
  /** The platform itself: seeding, sign-in, rendering. Named, so that the audit log says which part acted. */
  | { readonly kind: "system"; readonly name: string };

/** What row-level security is told for this actor. */
export type Scope =
  | { readonly kind: "laboratory" }
  | { readonly kind: "customer"; readonly customerId: string };

export const scopeOf = (actor: Actor): Scope =>
  actor.kind === "customer" ? { kind: "customer", customerId: actor.customerId } : { kind: "laboratory" };

/** As stored in the audit log: a reference, no personal data. */
export const actorIdOf = (actor: Actor): string =>
  actor.kind === "system" ? `system:${actor.name}` : actor.personId;

/**
 * The same person acting on their own account (sessions, password): in the laboratory's scope, because customers write
 * no table, and without any role, so that nothing else is open to them.
 */
export const ownAccountOf = (
  person: { readonly personId: string; readonly name: string } & OfSession,
): Actor => ({
  kind: "staff",
  personId: person.personId,
  name: person.name,
  roles: [],
  ...(person.session ? { session: person.session } : {}),
  ...(person.sessionId ? { sessionId: person.sessionId } : {}),
});
