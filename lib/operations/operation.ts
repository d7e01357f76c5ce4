import type { z } from "zod";
import type { Tx } from "@/lib/data/in-scope";
import type { AuditEvent } from "@/lib/domain/audit/define-event";
import type { Proved } from "@/lib/domain/signing/proved";
import type { Actor } from "@/lib/domain/staff/actor";
import type { Permission } from "@/lib/domain/staff/permissions";

export type OperationContext<A extends Actor = Actor> = {
  readonly actor: A;
  /** The moment of the act, from the caller's clock. */
  readonly now: Date;
  readonly tx: Tx;
  /** Of an operation that signs: what `first` made sure of. */
  readonly proved?: Proved;
};

/** The type is the guard: nothing can be returned without at least one audit event. */
export type Outcome<O> = { readonly value: O; readonly events: readonly [AuditEvent, ...AuditEvent[]] };

/** One verb. `permission: "system"` marks what only the platform itself does (seed, first access, rendering). */
export type Operation<S extends z.ZodType, O> = {
  readonly name: string;
  readonly permission: Permission | "system" | "signed-in";
  /**
   * A customer writes no table. What it asks for is written in the laboratory's scope: an operation that says so has to
   * hold everything it loads against `actor.customerId` itself, by `demandOwn`.
   */
  readonly scope?: "laboratory";
  readonly input: S;
  /**
   * Of an operation that signs: everything that would refuse it, asked in a transaction that writes nothing, before who
   * signs is asked for a proof. A code is used up by being shown; what is refused anyway must not cost one. `perform` asks
   * it all again, under its locks.
   */
  readonly ready?: (context: OperationContext, input: z.output<S>) => Promise<void>;
  /**
   * Of an operation that signs: who signs shows that they are there, in a transaction before that of the act. What it
   * writes stays although the act is refused, so that a wrong code counts.
   */
  readonly first?: (
    asked: { readonly actor: Actor; readonly clock: () => Date },
    input: z.output<S>,
  ) => Promise<Proved>;
  readonly perform: (context: OperationContext, input: z.output<S>) => Promise<Outcome<O>>;
};

export const defineOperation = <S extends z.ZodType, O>(operation: Operation<S, O>): Operation<S, O> =>
  operation;
