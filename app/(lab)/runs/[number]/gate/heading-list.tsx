import { StateMark } from "@/app/_ui/state-mark";
import { gateHeadingLabels } from "@/lib/domain/gate/headings";
import type { RunGateView } from "@/lib/views/run/run-gate";
import css from "./gate.module.css";
import { gateMark } from "./gate-marks";

/** The headings at a glance, each the way down to its rows. */
export function HeadingList({ headings }: { readonly headings: RunGateView["headings"] }) {
  return (
    <nav aria-label="Headings of the gate">
      <ol className={css.headings}>
        {headings.map(({ heading, severity }) => (
          <li key={heading}>
            <a href={`#${heading}`}>{gateHeadingLabels[heading]}</a>
            <StateMark {...gateMark(severity)} />
          </li>
        ))}
      </ol>
    </nav>
  );
}
