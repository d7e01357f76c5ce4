import { found, type Outcome } from "@/lib/metrology/outcome";
import { applyCmc } from "@/lib/metrology/reporting/apply-cmc";
import { capabilityAt } from "@/lib/metrology/reporting/capability-at";
import type { Capability } from "./capability";
import type { EvaluatedScope } from "./evaluation";
import type { Evidence, ScopeLine, TypeLetter } from "./schema";

const notStated: EvaluatedScope = {
  state: "not-stated",
  capabilityCelsius: null,
  isRaised: false,
  source: null,
};

const capabilityOf = (line: ScopeLine): Capability =>
  line.capability ?? { kind: "constant", expandedCelsius: line.expandedCelsius ?? Number.NaN };

/**
 * The point against the laboratory's scope: the smallest capability stated for its type and temperature, and whether
 * U as computed lies below it. Outside, nothing is raised, and the point is marked (points one by one, not the whole).
 * Refused where a line that covers the point states no usable capability there.
 */
export function pointScope(
  scope: Evidence["scope"],
  type: TypeLetter,
  celsius: number,
  expandedCelsius: number,
): Outcome<EvaluatedScope> {
  if (!scope) return found(notStated);
  let least: { readonly capabilityCelsius: number; readonly source: string } | null = null;
  for (const line of scope) {
    if (line.type !== type || celsius < line.fromCelsius || celsius > line.toCelsius) continue;
    const at = capabilityAt(capabilityOf(line), celsius);
    if (!at.ok) return at;
    // Two lines that meet at one temperature both hold there.
    if (least === null || at.value < least.capabilityCelsius)
      least = { capabilityCelsius: at.value, source: line.source };
  }
  if (least === null) return found({ ...notStated, state: "outside" });
  // A function made to pass through a fixed zero has U = 0 there: still no smaller U is reported than the capability.
  if (expandedCelsius === 0) return found({ state: "inside", ...least, isRaised: true });
  const reported = applyCmc(expandedCelsius, least.capabilityCelsius);
  if (!reported.ok) return reported;
  return found({ state: "inside", ...least, isRaised: reported.value.origin === "capability" });
}

/** U in °C as it is reported: never below the capability. */
export const reportedCelsius = ({ isRaised, capabilityCelsius }: EvaluatedScope, expanded: number): number =>
  isRaised && capabilityCelsius !== null ? capabilityCelsius : expanded;
