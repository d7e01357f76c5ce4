import { Timestamp } from "@/app/_ui/timestamp";
import type { ReviewRunPage } from "@/lib/views/review-run";

const words: Readonly<Record<string, string>> = {
  submitted: "submitted the run",
  returned: "returned the run",
  "signed-off": "signed off",
  "second-look": "took the second look at",
  "put-back": "set the results aside of",
  kept: "kept for its certificate the results of",
};

/** Who decided what, the latest first. */
export function DecisionHistory({ decisions }: { readonly decisions: ReviewRunPage["decisions"] }) {
  if (decisions.length === 0) return <p className="quiet">Nothing decided yet.</p>;
  return (
    <ul className="plain-list">
      {[...decisions].reverse().map((decision) => (
        <li key={decision.key}>
          <Timestamp at={decision.at} precision="minute" />: {decision.by}{" "}
          {words[decision.decision] ?? decision.decision}
          {decision.sensor ? ` ${decision.sensor}` : ""}
          {decision.reason ? `: ${decision.reason}` : "."}
        </li>
      ))}
    </ul>
  );
}
