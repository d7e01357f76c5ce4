import type { LogEntry } from "./logbook";
import { isUnsettling } from "./service-standing";
import type { EquipmentState } from "./types";

/** Nonconforming work found on equipment, or on a calibration of it. */
export type DoubtReport = {
  readonly number: string;
  /** Nobody has recorded yet what it does to results. */
  readonly isUnexamined: boolean;
  readonly isClosed: boolean;
  readonly openedAt: Date;
  /** When an effect on results was recorded last. */
  readonly examinedAt: Date | null;
};

export type Doubt = {
  readonly isExamined: boolean;
  /** Where the effect is recorded, or is to be; null: nothing was reported yet. */
  readonly report: string | null;
};

type Dated = Pick<LogEntry, "kind" | "outcome"> & { readonly recordedAt: Date };

const out = new Set<EquipmentState>(["suspect", "under-repair"]);

/**
 * ISO/IEC 17025 6.4.9: what gives questionable results is taken out of service, and its effect is examined. Coming back
 * into service does not settle what was measured before: only the examination does. What a run does that began after the
 * verification is not touched. Entries as they were written.
 */
export const doubtOf = (given: {
  readonly state: EquipmentState;
  readonly entries: readonly Dated[];
  readonly reports: readonly DoubtReport[];
  readonly runBeganAt: Date;
}): Doubt | null => {
  const at = given.entries.findLastIndex(isUnsettling);
  const against = given.entries[at];
  const restored = given.entries
    .slice(at + 1)
    .find(({ kind, outcome }) => kind === "verification" && outcome === "passed")?.recordedAt;
  const isAfter = restored !== undefined && given.runBeganAt >= restored;
  const unexamined = given.reports.find(
    ({ isUnexamined, openedAt }) => isUnexamined && !(isAfter && openedAt <= restored),
  );
  if (unexamined) return { isExamined: false, report: unexamined.number };
  if (!out.has(given.state) && !(given.state === "retired" && against && !restored)) return null;
  const examined = given.reports.findLast(
    ({ examinedAt }) => examinedAt !== null && (!against || examinedAt >= against.recordedAt),
  );
  if (examined) return { isExamined: true, report: examined.number };
  // Examined for something earlier: the one that is still open takes this up as well.
  return { isExamined: false, report: given.reports.findLast(({ isClosed }) => !isClosed)?.number ?? null };
};
