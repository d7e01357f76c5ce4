import type { Tx } from "@/lib/data/in-scope";
import { isoDay } from "@/lib/domain/calibration/due";
import {
  type EntryKind,
  type EntryOutcome,
  type LogEntry,
  readEntryFigures,
} from "@/lib/domain/equipment/logbook";

type StoredEntry = {
  readonly id: bigint;
  readonly kind: string;
  readonly happenedOn: Date;
  readonly outcome: string;
  readonly summary: string;
  readonly figures: string;
};

/** Entries written row by row, before there was a form, may have no figures; their kind still counts. */
const figuresOf = ({ kind, figures }: StoredEntry): LogEntry["figures"] =>
  figures === "{}" ? ({ kind } as LogEntry["figures"]) : readEntryFigures(figures);

export const readEntry = (row: StoredEntry): LogEntry => ({
  id: Number(row.id),
  kind: row.kind as EntryKind,
  happenedOn: isoDay(row.happenedOn),
  outcome: row.outcome as EntryOutcome,
  summary: row.summary,
  figures: figuresOf(row),
});

type NewEntry = Pick<LogEntry, "kind" | "happenedOn" | "outcome" | "summary" | "figures"> & {
  readonly documentId?: string | null;
  readonly recordedById: string | null;
  readonly recordedAt: Date;
};

export const insertEntry = (tx: Tx, equipmentId: string, entry: NewEntry) =>
  tx.equipmentEntry.create({
    data: {
      equipmentId,
      kind: entry.kind,
      happenedOn: new Date(`${entry.happenedOn}T00:00:00Z`),
      outcome: entry.outcome,
      summary: entry.summary,
      figures: JSON.stringify(entry.figures),
      documentId: entry.documentId ?? null,
      recordedById: entry.recordedById,
      recordedAt: entry.recordedAt,
    },
  });

/** In the order they were written. */
export const loadLogbook = async (tx: Tx, equipmentId: string): Promise<LogEntry[]> =>
  (await tx.equipmentEntry.findMany({ where: { equipmentId }, orderBy: { id: "asc" } })).map(readEntry);
