import type { GateRow } from "./assessment";

const sameRow = (one: GateRow, other: GateRow): boolean =>
  one.code === other.code &&
  one.severity === other.severity &&
  one.reason === other.reason &&
  one.remedy === other.remedy &&
  one.source === other.source &&
  one.given === other.given;

/** One reason for many: rows that differ in their subject alone become one, in the order of the load. */
export const groupRows = (rows: readonly GateRow[]): readonly GateRow[] => {
  const grouped: GateRow[] = [];
  for (const row of rows) {
    const at = grouped.findIndex((one) => sameRow(one, row));
    const twin = grouped[at];
    if (!twin) grouped.push(row);
    else grouped[at] = { ...twin, subjects: [...new Set([...twin.subjects, ...row.subjects])] };
  }
  return grouped;
};
