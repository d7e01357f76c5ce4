import type { z } from "zod";
import type { Tx } from "@/lib/data/in-scope";
import type { AuditEvent } from "@/lib/domain/audit/define-event";
import type { Actor } from "@/lib/domain/staff/actor";
import type { Permission } from "@/lib/domain/staff/permissions";

export type OperationContext<A extends Actor = Actor> = {
  readonly actor: A;
  /** The moment of the act, from the caller's clock. */
  readonly now: Date;
  readonly tx: Tx;
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
  readonly perform: (context: OperationContext, input: z.output<S>) => Promise<Outcome<O>>;
};

export const defineOperation = <S extends z.ZodType, O>(operation: Operation<S, O>): Operation<S, O> =>
  operation;
