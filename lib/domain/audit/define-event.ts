import type { z } from "zod";

/**
 * One past-tense fact the audit log can hold, e.g. "order.accepted".
 * The payload holds references and figures, never names of people (they stay erasable); `sentence` is what the audit
 * page reads after the person's name: "accepted order O-2026-0007".
 */
export type EventDefinition<K extends string, P> = {
  readonly action: K;
  readonly entityKind: string;
  readonly payload: z.ZodType<P>;
  readonly sentence: (payload: P) => string;
};

export const defineEvent = <K extends string, P>(definition: EventDefinition<K, P>): EventDefinition<K, P> =>
  definition;

/** An event as an operation returns it. Made only by `eventOf`, so that the payload fits its definition. */
export type AuditEvent = {
  readonly action: string;
  readonly entityKind: string;
  readonly entityId: string;
  readonly payload: unknown;
};

export const eventOf = <K extends string, P>(
  definition: EventDefinition<K, P>,
  entityId: string,
  payload: P,
): AuditEvent => ({
  action: definition.action,
  entityKind: definition.entityKind,
  entityId,
  payload: definition.payload.parse(payload),
});
