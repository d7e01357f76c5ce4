import { loadCarried } from "@/lib/data/audit/load-carried";
import { type AuditFilter, readAuditEvents } from "@/lib/data/audit/read-events";
import { verifyChain } from "@/lib/data/audit/verify-chain";
import { describeUnheld, firstUnheld } from "@/lib/domain/audit/carried-checkpoints";
import { describeBreak, type StoredEvent } from "@/lib/domain/audit/chain";
import { describeEvent } from "@/lib/domain/audit/describe";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

const pageSize = 50;
const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString("hex");

export type AuditRow = {
  readonly sequence: string;
  readonly at: string;
  readonly who: string;
  readonly actorId: string;
  readonly sentence: string;
  /** Whom it was done to, where that is a person and not the one who did it. */
  readonly about: string | null;
  readonly understood: boolean;
  readonly entityKind: string;
  readonly entityId: string;
  /** Number or tag of the thing, as its page is addressed; null where the event does not say. */
  readonly named: string | null;
  readonly hash: string;
};

/** Events name their thing by number or tag as well as by id, each noun in its own field. */
const namedBy: Readonly<Record<string, readonly string[]>> = {
  order: ["number"],
  run: ["run", "number"],
  sensor: ["tag"],
  certificate: ["number", "certificate"],
};

const nameIn = (event: StoredEvent): string | null => {
  const payload = JSON.parse(event.payload) as Readonly<Record<string, unknown>>;
  const fields = namedBy[event.entityKind] ?? [];
  const value = fields.map((field) => payload[field]).find((one) => typeof one === "string");
  return typeof value === "string" ? value : null;
};

const rowOf = (event: StoredEvent, names: ReadonlyMap<string, string>): AuditRow => {
  const nameOf = (id: string) => names.get(id);
  const { who, sentence, understood } = describeEvent(event, nameOf);
  const aboutSomebody = event.entityKind === "person" && event.entityId !== event.actorId;
  return {
    sequence: String(event.sequence),
    at: new Date(Number(event.atMicroseconds / 1000n)).toISOString(),
    who,
    actorId: event.actorId,
    sentence,
    about: aboutSomebody ? (nameOf(event.entityId) ?? null) : null,
    understood,
    entityKind: event.entityKind,
    entityId: event.entityId,
    named: nameIn(event),
    hash: hex(event.hash),
  };
};

/** One page of the log as sentences, newest first. */
export const auditLogView = (actor: Actor, filter: AuditFilter, before: bigint | null) =>
  answer(actor, "audit.read", async (tx) => {
    const { events, next } = await readAuditEvents(tx, filter, { before, limit: pageSize });
    const ids = events.flatMap((event) => [event.actorId, event.entityId]).filter((id) => uuid.test(id));
    const people = await tx.person.findMany({
      where: { id: { in: [...new Set(ids)] } },
      select: { id: true, name: true },
    });
    const names = new Map(people.map(({ id, name }) => [id, name]));
    return {
      rows: events.map((event) => rowOf(event, names)),
      next: next === null ? null : String(next),
    };
  });

/**
 * Whether every link of the chain holds, recomputed now from the first event to the last; and, as a log rewritten as a
 * whole would still link, whether it is the one that certificates were signed over.
 */
export const chainVerdictView = async (actor: Actor) => {
  const carried = await answer(actor, "audit.read", loadCarried);
  const verdict = await verifyChain();
  const { events } = verdict;
  if (verdict.kind === "broken")
    return { kind: "broken", events, what: describeBreak(verdict.broken) } as const;
  const unheld = firstUnheld(carried);
  if (unheld) return { kind: "rewritten", events, what: describeUnheld(unheld) } as const;
  return { kind: "whole", events, head: hex(verdict.head.hash), certificates: carried.length } as const;
};
