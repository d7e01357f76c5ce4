import type { StoredEvent } from "./chain";
import { eventDefinition } from "./events";

export type DescribedEvent = {
  readonly who: string;
  /** "accepted order O-2026-0007": read after the name. */
  readonly sentence: string;
  /** False where the catalogue does not know the action or its payload does not fit: a defect to be named. */
  readonly understood: boolean;
};

const systemParts = /^system:(.+)$/;

const whoOf = (actorId: string, nameOf: (id: string) => string | undefined): string => {
  const part = systemParts.exec(actorId)?.[1];
  if (part !== undefined) return `The platform (${part})`;
  // Names are not in the log, so that a person can be forgotten without breaking the chain.
  return nameOf(actorId) ?? "Somebody no longer on record";
};

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

/** A stored event as a sentence. Names of people are looked up by id, at the time of reading. */
export const describeEvent = (
  event: Pick<StoredEvent, "actorId" | "action" | "entityKind" | "payload">,
  nameOf: (id: string) => string | undefined,
): DescribedEvent => {
  const who = whoOf(event.actorId, nameOf);
  const definition = eventDefinition(event.action);
  const payload = definition?.payload.safeParse(parsed(event.payload));
  if (!definition || !payload?.success || definition.entityKind !== event.entityKind)
    return { who, sentence: `did something this version cannot read (${event.action})`, understood: false };
  return { who, sentence: definition.sentence(payload.data), understood: true };
};
