import { nameField, oneOf, type Query, readQuery, uuidField } from "../list/query";
import { type RunState, runStates } from "./states";

/** open: what lies with the technician. */
export const runFilters = ["open", ...runStates, "all"] as const;
export type RunFilter = (typeof runFilters)[number];

const fields = {
  show: oneOf(runFilters),
  furnace: uuidField,
  after: nameField,
  before: nameField,
} as const;

export type RunQuery = Query<typeof fields>;

export const readRunQuery = (given: Parameters<typeof readQuery>[1]): RunQuery => readQuery(fields, given);

export const shownRuns = (query: RunQuery): RunFilter =>
  runFilters.find((name) => name === query.show) ?? "all";

export const runStatesOf = (filter: RunFilter): readonly RunState[] => {
  if (filter === "open") return ["planned", "measuring", "returned"];
  return filter === "all" ? runStates : [filter];
};
