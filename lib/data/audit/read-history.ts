import { eventDefinition } from "@/lib/domain/audit/events";
import type { Tx } from "../in-scope";

export type HistoryEntry = {
  readonly key: string;
  readonly at: string;
  /** The person, or the part of the platform that acted. */
  readonly who: string;
  /** What is read after the name: "accepted order O-2026-0007". */
  readonly sentence: string;
  readonly action: string;
  readonly entityId: string;
};

const sentenceOf = (action: string, payload: string): string => {
  const definition = eventDefinition(action);
  return definition ? definition.sentence(JSON.parse(payload) as never) : action;
};

/** What the audit log says of these things, the newest first. */
export const readHistory = async (
  tx: Tx,
  entityKind: string,
  entityIds: readonly string[],
): Promise<readonly HistoryEntry[]> => {
  const events = await tx.auditEvent.findMany({
    where: { entityKind, entityId: { in: [...entityIds] } },
    orderBy: { sequence: "desc" },
  });
  const ids = events.map((event) => event.actorId).filter((id) => /^[0-9a-f-]{36}$/.test(id));
  const people = await tx.person.findMany({ where: { id: { in: ids } }, select: { id: true, name: true } });
  const names = new Map(people.map((person) => [person.id, person.name]));
  return events.map((event) => ({
    key: String(event.sequence),
    at: new Date(Number(event.atMicroseconds / 1000n)).toISOString(),
    who: names.get(event.actorId) ?? event.actorId.replace("system:", "The platform, "),
    sentence: sentenceOf(event.action, event.payload),
    action: event.action,
    entityId: event.entityId,
  }));
};
