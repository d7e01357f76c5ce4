import { ok, type Result, refuse } from "../refusal";
import { entryKindLabels } from "./labels";
import type { EntryFigures, EntryOutcome, LogEntry } from "./logbook";
import { isUnsettling } from "./service-standing";
import type { Equipment, EquipmentState } from "./types";

type Asked = {
  readonly equipment: Pick<Equipment, "tag" | "kind" | "state" | "receivedOn">;
  readonly figures: EntryFigures;
  readonly said: "passed" | "failed" | undefined;
  readonly happenedOn: string;
  readonly today: string;
  /** In the order they were written. */
  readonly entries: readonly LogEntry[];
};

export type DecidedEntry = {
  readonly outcome: EntryOutcome;
  /** Where the entry by itself takes the equipment; null = it stays where it is. */
  readonly state: EquipmentState | null;
};

const ofReferences = new Set<EntryFigures["kind"]>(["anneal", "check-after-anneal"]);
/** Kinds that speak for the equipment: what they say holds only against what came before them. */
const speaksFor = new Set<EntryFigures["kind"]>(["verification", "intermediate-check", "check-after-anneal"]);

const outcomeOf = ({ figures, said }: Pick<Asked, "figures" | "said">): EntryOutcome => {
  if (figures.kind === "intermediate-check" || figures.kind === "check-after-anneal")
    return Math.abs(figures.found - figures.expected) <= figures.limit ? "passed" : "failed";
  return figures.kind === "verification" ? (said ?? "none") : "none";
};

/** Where an entry takes the equipment by itself: out of service at once, into `verified` only by a passed verification. */
export const stateAfter = (
  from: EquipmentState,
  entry: { readonly kind: EntryFigures["kind"]; readonly outcome: EntryOutcome },
): EquipmentState | null => {
  const isTrusted = from === "in-service" || from === "verified";
  if (entry.kind === "verification" && entry.outcome === "passed") return isTrusted ? null : "verified";
  if (entry.kind === "repair" || entry.kind === "adjustment")
    return isTrusted || from === "suspect" ? "under-repair" : null;
  return isTrusted && isUnsettling(entry) ? "suspect" : null;
};

const dayProblem = ({ equipment, figures, happenedOn, today, entries }: Asked): string | null => {
  if (happenedOn > today) return "This day has not come yet.";
  if (equipment.receivedOn !== null && happenedOn < equipment.receivedOn)
    return `It was received on ${equipment.receivedOn}.`;
  const before = entries.findLast((entry) => isUnsettling(entry) || entry.kind === "anneal");
  return speaksFor.has(figures.kind) && before && happenedOn < before.happenedOn
    ? `Its logbook has, on ${before.happenedOn}: ${entryKindLabels[before.kind].toLowerCase()}. What speaks for it comes after that.`
    : null;
};

/** Whether an entry may be written, how it is judged, and what follows from it. */
export const decideEntry = (asked: Asked): Result<DecidedEntry> => {
  const { equipment, figures, said } = asked;
  if (equipment.state === "retired")
    return refuse("wrong-state", "This equipment is retired: its logbook is closed.");
  if (ofReferences.has(figures.kind) && equipment.kind !== "reference")
    return refuse("invalid", "Only a reference thermocouple is annealed. Nothing was stored.", {
      "figures.kind": "Choose another kind of entry.",
    });
  const fields: Record<string, string> = {};
  const problem = dayProblem(asked);
  if (problem) fields.happenedOn = problem;
  if (figures.kind === "verification" && said === undefined) fields.outcome = "Say whether it passed.";
  if (figures.kind === "damage" && figures.soundOn !== undefined && figures.soundOn > asked.happenedOn)
    fields["figures.soundOn"] = "It was sound before it was damaged.";
  if (Object.keys(fields).length > 0)
    return refuse("invalid", "Nothing was stored; what you typed is still here.", fields);
  const outcome = outcomeOf(asked);
  return ok({ outcome, state: stateAfter(equipment.state, { kind: figures.kind, outcome }) });
};
