import { checkCharts } from "./check-chart";
import type { LogEntry } from "./logbook";
import type { ServiceStanding } from "./service-problem";
import type { EquipmentRecord } from "./types";

/** Kinds after which a thing is no longer what was verified. */
const unsettling = new Set<LogEntry["kind"]>(["damage", "repair", "adjustment"]);

const latest = (one: string | null, other: string | null): string | null =>
  one === null || (other !== null && other > one) ? other : one;

const lastOf = (entries: readonly LogEntry[], kinds: readonly LogEntry["kind"][]): LogEntry | undefined =>
  entries.findLast(({ kind, outcome }) => kinds.includes(kind) && outcome !== "failed");

/** After this a thing is no longer what was verified: damage, repair, adjustment, or anything it failed. */
export const isUnsettling = ({ kind, outcome }: Pick<LogEntry, "kind" | "outcome">): boolean =>
  unsettling.has(kind) || outcome === "failed";

/** A passed verification stands that no damage, repair, adjustment or failure has followed. Entries as they were written. */
export const isVerified = (entries: readonly LogEntry[]): boolean => {
  const against = entries.findLastIndex(isUnsettling);
  return entries
    .slice(against + 1)
    .some(({ kind, outcome }) => kind === "verification" && outcome === "passed");
};

/** A check that passed after the anneal, whichever of the two kinds: both compare it with something known. */
const uncheckedAnneal = (entries: readonly LogEntry[]): string | null => {
  const at = entries.findLastIndex(({ kind }) => kind === "anneal");
  if (at < 0) return null;
  const isChecked = entries
    .slice(at + 1)
    .some(
      ({ kind, outcome }) =>
        (kind === "check-after-anneal" || kind === "intermediate-check") && outcome === "passed",
    );
  return isChecked ? null : (entries[at]?.happenedOn ?? null);
};

/** What a logbook, in the order it was written, says of a piece of equipment. */
export const serviceStanding = (
  record: Pick<EquipmentRecord, "receivedOn" | "checkIntervalDays" | "maintenanceIntervalDays">,
  entries: readonly LogEntry[],
  /** When the calibration in force was performed: a calibration is a check as well. */
  calibratedOn: string | null,
): ServiceStanding => ({
  since:
    record.receivedOn ??
    entries.find(({ kind, outcome }) => kind === "verification" && outcome === "passed")?.happenedOn ??
    null,
  check: {
    everyDays: record.checkIntervalDays,
    lastOn: latest(
      lastOf(entries, ["intermediate-check", "check-after-anneal"])?.happenedOn ?? null,
      calibratedOn,
    ),
  },
  maintenance: {
    everyDays: record.maintenanceIntervalDays,
    lastOn: lastOf(entries, ["maintenance"])?.happenedOn ?? null,
  },
  chartBreach: checkCharts(entries).find(({ breach }) => breach !== null)?.breach ?? null,
  uncheckedAnneal: uncheckedAnneal(entries),
});
