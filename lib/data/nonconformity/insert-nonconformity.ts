import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { nonconformityEvents } from "@/lib/domain/nonconformity/events";
import type { EntryFigures } from "@/lib/domain/nonconformity/figures";
import type {
  EntryKind,
  NonconformityKind,
  NonconformityState,
  SubjectKind,
} from "@/lib/domain/nonconformity/labels";
import type { Tx } from "../in-scope";
import { nextNumber } from "../number/next-number";
import type { Subject } from "./find-subject";

export type NewNonconformity = {
  readonly kind: NonconformityKind;
  readonly title: string;
  readonly description: string;
  readonly subjectKind: SubjectKind;
  readonly subject: Subject;
  readonly openedById: string;
  readonly openedAt: Date;
};

/** Opens one; answers its number and the event to return with one's own. */
export const insertNonconformity = async (
  tx: Tx,
  { subject, ...opened }: NewNonconformity,
): Promise<{ readonly id: string; readonly number: string; readonly event: AuditEvent }> => {
  const year = opened.openedAt.getUTCFullYear();
  const taken = await nextNumber(tx, `nonconformity-${year}`);
  const number = `N-${year}-${String(taken).padStart(4, "0")}`;
  const { kind, subjectKind, title } = opened;
  const { id } = await tx.nonconformity.create({
    data: {
      ...opened,
      number,
      subjectName: subject.name,
      subjectId: subject.id,
      customerId: kind === "complaint" ? subject.customerId : null,
    },
    select: { id: true },
  });
  const payload = { number, kind, subjectKind, subjectName: subject.name, title };
  return { id, number, event: eventOf(nonconformityEvents.opened, id, payload) };
};

export type NewEntry = {
  readonly kind: EntryKind;
  readonly text: string;
  readonly figures?: EntryFigures;
  readonly saidById: string | null;
  readonly saidAt: Date;
};

/** Adds a line to its story; answers the event. `state`: as it is after this entry. */
export const insertEntry = async (
  tx: Tx,
  { id, number, state }: { readonly id: string; readonly number: string; readonly state: NonconformityState },
  { figures = {}, ...entry }: NewEntry,
): Promise<AuditEvent> => {
  await tx.nonconformityEntry.create({
    data: { ...entry, figures: JSON.stringify(figures), nonconformityId: id },
  });
  const { kind, text } = entry;
  return eventOf(nonconformityEvents.entered, id, { number, kind, text, state });
};
