import Link from "next/link";
import type { ReactNode } from "react";

export type Bead = {
  readonly label: string;
  /** done: behind us; now: the step at work; next: to come; stopped: it ended here. */
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
  /** Its labels name states, not steps: the one of `now` has been reached. */
  readonly ofStates?: boolean;
};

const spoken = { done: "done", now: "now", next: "to come", stopped: "stopped here" } as const;

/**
 * A step's label tells of it done, so that the one at work is named as next. Not the first, by which the thing is here
 * at all; and "Received 3 of 5" says itself how far it is.
 */
const isAhead = ({ label, state }: Bead): boolean => state === "now" && !/\d of \d+$/.test(label);

/** The one life of a thing, ordered to collected. */
export function Thread({ beads, last, next, label = "Thread", ofStates = false }: Props) {
  const isOver = beads.every(({ state }) => state === "done" || state === "next");
  return (
    <nav className="thread" aria-label={label}>
      <ol>
        {beads.map((bead, index) => {
          const isNext = !ofStates && index > 0 && isAhead(bead);
          return (
            <li
              key={bead.label}
              className={isOver && index === beads.length - 1 ? "thread-end" : undefined}
              data-state={bead.state}
              aria-current={bead.state === "now" ? "step" : undefined}
            >
              <span className="thread-bead" aria-hidden="true" />
              <span className="thread-label">
                {isNext ? (
                  <span className="thread-ahead" aria-hidden="true">
                    next:{" "}
                  </span>
                ) : null}
                {bead.href ? <Link href={bead.href}>{bead.label}</Link> : bead.label}
                <span className="unseen">, {isNext ? "comes next" : spoken[bead.state]}</span>
              </span>
            </li>
          );
        })}
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
