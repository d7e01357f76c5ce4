import type { StandardRow } from "@/lib/views/standards";

/** Each filter is an address of its own, so that it can be sent to somebody. */
export const standardFilters = [
  { key: "", label: "All but retired", keeps: (row: StandardRow) => row.state !== "retired" },
  {
    key: "not-to-be-used",
    label: "Not to be used",
    keeps: (row: StandardRow) =>
      row.state !== "retired" &&
      (row.state !== "in-service" || row.due === "out-of-date" || row.against?.blocks === true),
  },
  {
    key: "due",
    label: "Coming due",
    keeps: (row: StandardRow) => row.state !== "retired" && (row.due === "due" || row.workDue === "due"),
  },
  {
    key: "not-in-service",
    label: "Not in service yet",
    keeps: (row: StandardRow) => row.state === "received" || row.state === "verified",
  },
  { key: "retired", label: "Retired", keeps: (row: StandardRow) => row.state === "retired" },
] as const;

export type StandardFilter = (typeof standardFilters)[number];

export const filterOf = (asked: string | readonly string[] | undefined): StandardFilter =>
  standardFilters.find(({ key }) => key === asked) ?? standardFilters[0];
