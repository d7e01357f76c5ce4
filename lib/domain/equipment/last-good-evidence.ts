import type { LogEntry } from "./logbook";
import { isUnsettling } from "./service-standing";

const speaksFor = new Set<LogEntry["kind"]>(["verification", "intermediate-check", "check-after-anneal"]);

/**
 * The last day on which something spoke for equipment that is in doubt: a check that passed, a calibration, or the day
 * on which whoever found the damage knows it to have been sound. Results since then are in doubt with it; null = all.
 */
export const lastGoodEvidence = (
  entries: readonly LogEntry[],
  calibratedOn: readonly string[],
): string | null => {
  const against = entries.findLastIndex(isUnsettling);
  const doubted = entries[against];
  const until = doubted?.happenedOn ?? "9999-12-31";
  const days = [
    ...entries
      .slice(0, against < 0 ? entries.length : against)
      .filter(({ kind, outcome }) => speaksFor.has(kind) && outcome === "passed")
      .map(({ happenedOn }) => happenedOn),
    ...calibratedOn,
    ...(doubted?.figures.kind === "damage" && doubted.figures.soundOn ? [doubted.figures.soundOn] : []),
  ].filter((day) => day <= until);
  return days.toSorted().at(-1) ?? null;
};
