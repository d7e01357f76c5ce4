import { StateMark } from "@/app/_ui/state-mark";
import type { EvaluatedScope } from "@/lib/domain/evidence/evaluation";

/** A point against the laboratory's accredited scope: in or out, its capability, and whether that stands in place of U. */
export function ScopeStanding({ scope }: { readonly scope: EvaluatedScope }) {
  if (scope.state === "not-stated") return <span className="quiet">No scope was stated</span>;
  if (scope.capabilityCelsius === null) return <StateMark state="outside-scope" />;
  return (
    <>
      <StateMark state="inside-scope" />, capability {Number(scope.capabilityCelsius.toPrecision(3))}
      {"\u00a0°C"}
      {scope.isRaised ? ", which stands in place of the smaller U computed" : ""}
      {scope.source ? <span className="quiet"> ({scope.source})</span> : null}
    </>
  );
}
