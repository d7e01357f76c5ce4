import { applyCmc } from "@/lib/metrology/reporting/apply-cmc";
import type { EvaluatedScope } from "./evaluation";
import type { Evidence, TypeLetter } from "./schema";

const notStated: EvaluatedScope = {
  state: "not-stated",
  capabilityCelsius: null,
  isRaised: false,
  source: null,
};

/**
 * The point against the laboratory's scope: the smallest capability stated for its type and temperature, and whether
 * U as computed lies below it. Outside, nothing is raised, and the point is marked (points one by one, not the whole).
 */
export function pointScope(
  scope: Evidence["scope"],
  type: TypeLetter,
  celsius: number,
  expandedCelsius: number,
): EvaluatedScope {
  if (!scope) return notStated;
  const lines = scope.filter(
    (line) => line.type === type && celsius >= line.fromCelsius && celsius <= line.toCelsius,
  );
  const [first] = [...lines].sort((a, b) => a.expandedCelsius - b.expandedCelsius);
  if (!first) return { ...notStated, state: "outside" };
  const reported = applyCmc(expandedCelsius, first.expandedCelsius);
  return {
    state: "inside",
    capabilityCelsius: first.expandedCelsius,
    isRaised: reported.ok && reported.value.origin === "capability",
    source: first.source,
  };
}

/** U in °C as it is reported: never below the capability. */
export const reportedCelsius = ({ isRaised, capabilityCelsius }: EvaluatedScope, expanded: number): number =>
  isRaised && capabilityCelsius !== null ? capabilityCelsius : expanded;
