import type { z } from "zod";
import { appendAuditEvents } from "@/lib/data/audit/append";
import { inScope } from "@/lib/data/in-scope";
import { tellPrograms } from "@/lib/data/machine/tell-programs";
import { tellNews } from "@/lib/data/mail/tell-news";
import { Refused } from "@/lib/domain/refusal";
import { type Actor, actorIdOf, scopeOf } from "@/lib/domain/staff/actor";
import { benchMay } from "@/lib/domain/staff/bench";
import { may } from "@/lib/domain/staff/permissions";
import type { Operation } from "./operation";

export type Clock = () => Date;

const permitted = (actor: Actor, permission: Operation<z.ZodType, unknown>["permission"]): boolean => {
  if (actor.kind === "system") return true;
  if (permission === "signed-in") return true;
  return permission !== "system" && may(actor.roles, permission);
};

/** At the bench somebody records and does not sign: held here, where no operation can forget it. */
const closedAtTheBench = (actor: Actor, permission: string): boolean =>
  actor.kind !== "system" && actor.session === "bench" && permission !== "signed-in" && !benchMay(permission);

/** zod's issues as field → message, named like the form's fields ("lines.0.quantity"). */
const fieldsOf = (error: z.ZodError): Record<string, string> =>
  Object.fromEntries(error.issues.toReversed().map((issue) => [issue.path.join("."), issue.message]));

/**
 * The only way anything happens: permission, then input, then one transaction in which the operation loads, decides
 * and writes; the audit events come last, on the locked head of the chain.
 */
export const execute = async <S extends z.ZodType, O>(
  operation: Operation<S, O>,
  actor: Actor,
  input: z.input<S>,
  clock: Clock,
): Promise<O> => {
  if (!permitted(actor, operation.permission))
    throw new Refused({
      code: "not-permitted",
      message: "Your roles do not allow this. Nothing was changed.",
    });
  if (closedAtTheBench(actor, operation.permission))
    throw new Refused({
      code: "not-permitted",
      message:
        "A session at the bench records and does not sign. Nothing was changed; sign in without “at the bench” for this.",
    });
  const parsed = operation.input.safeParse(input);
  if (!parsed.success)
    throw new Refused({
      code: "invalid",
      message: "Some fields need another look. Nothing was stored; what you typed is still here.",
      fields: fieldsOf(parsed.error),
    });
  const scope = operation.scope === "laboratory" ? ({ kind: "laboratory" } as const) : scopeOf(actor);
  const { ready } = operation;
  if (ready) await inScope(scope, (tx) => ready({ actor, now: clock(), tx }, parsed.data));
  const proved = await operation.first?.({ actor, clock }, parsed.data);
  return inScope(scope, async (tx) => {
    const now = clock();
    const outcome = await operation.perform({ actor, now, tx, ...(proved ? { proved } : {}) }, parsed.data);
    if (scope.kind === "laboratory") {
      await tellPrograms(tx, outcome.events, now);
      await tellNews(tx, outcome.events, now);
    }
    await appendAuditEvents(tx, actorIdOf(actor), outcome.events);
    return outcome.value;
  });
};
