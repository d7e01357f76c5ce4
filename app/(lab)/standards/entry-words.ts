import { entryKindLabels } from "@/lib/domain/equipment/labels";
import type { LogEntry } from "@/lib/domain/equipment/logbook";

/** An entry in a few words. */
export const entryWords = (entry: LogEntry | null): string =>
  entry
    ? `${entryKindLabels[entry.kind]}, ${entry.happenedOn}${entry.outcome === "none" ? "" : `, ${entry.outcome}`}`
    : "nothing yet";
