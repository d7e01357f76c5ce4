import type { Evidence, ScopeLine } from "../evidence/schema";
import { isInForce, type StoredScopeLine } from "./line";

const evidenceLine = ({
  typeLetter,
  fromCelsius,
  toCelsius,
  capability,
  source,
}: StoredScopeLine): ScopeLine => ({
  type: typeLetter,
  fromCelsius,
  toCelsius,
  ...(capability.kind === "constant" ? { expandedCelsius: capability.expandedCelsius } : { capability }),
  source,
});

/**
 * The lines that a result of this day is held against; none in force: no scope is stated. `moment`: what was recorded
 * later changes nothing in what was already made.
 */
export const scopeInForce = (
  lines: readonly StoredScopeLine[],
  { day, moment }: { readonly day: string; readonly moment: Date },
): Evidence["scope"] => {
  const inForce = lines
    .filter((line) => isInForce(line, day) && line.recordedAt.getTime() <= moment.getTime())
    .toSorted(
      (one, other) =>
        one.typeLetter.localeCompare(other.typeLetter, "en") || one.fromCelsius - other.fromCelsius,
    );
  return inForce.length === 0 ? undefined : inForce.map(evidenceLine);
};
