import Link from "next/link";
import type { ReactNode } from "react";

export type Bead = {
  readonly label: string;
  /** done: behind us; now: where it stands; next: to come; stopped: it ended here. */
  readonly state: "done" | "now" | "next" | "stopped";
  /** The page of that moment. */
  readonly href?: string;
};

type Props = {
  readonly beads: readonly Bead[];
  /** Who moved it last, and when: "Loaded by A. Keller, 2026-03-04 09:12". */
  readonly last?: ReactNode;
  /** What comes now and who does it: "Next: the technician closes 900 °C". */
  readonly next?: ReactNode;
  /** Whose thread: "Thread of sensor 4711". */
  readonly label?: string;
};

const spoken = { done: "done", now: "now", next: "to come", stopped: "stopped here" } as const;

/** The one life of a thing, ordered to collected. */
export function Thread({ beads, last, next, label = "Thread" }: Props) {
  return (
    <nav className="thread" aria-label={label}>
      <ol>
        {beads.map((bead) => (
          <li
            key={bead.label}
            data-state={bead.state}
            aria-current={bead.state === "now" ? "step" : undefined}
          >
            <span className="thread-bead" aria-hidden="true" />
            <span className="thread-label">
              {bead.href ? <Link href={bead.href}>{bead.label}</Link> : bead.label}
              <span className="unseen">, {spoken[bead.state]}</span>
            </span>
          </li>
        ))}
      </ol>
      {last || next ? (
        <p className="thread-last">
          {last}
          {last && next ? " · " : null}
          {next}
        </p>
      ) : null}
    </nav>
  );
}
