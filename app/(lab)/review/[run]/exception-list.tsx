import Link from "next/link";
import type { ReactNode } from "react";
import { Disclosure } from "@/app/_ui/disclosure";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import type { ReviewRunPage } from "@/lib/views/review-run";

type Props = {
  readonly exceptions: ReviewRunPage["exceptions"];
  /** What stood out of sensors that are signed for. */
  readonly settled: number;
  /** What certificates will state as deviations. */
  readonly deviations: readonly string[];
  readonly note: string;
  /** What belongs under what stands out. */
  readonly children?: ReactNode;
};

const tones: Readonly<Record<string, "bad" | "rest">> = {
  "in-doubt": "bad",
  swap: "bad",
  "reference-shift": "bad",
  "junction-shift": "bad",
  typed: "rest",
  window: "rest",
  room: "rest",
  coverage: "rest",
};

type Line = Props["exceptions"][number];

const markOf = ({ isNote, kind }: Line) =>
  isNote ? ({ shape: "dotted-ring", tone: "rest" } as const) : ({ tone: tones[kind] ?? "watch" } as const);

const noteOf = (exceptions: readonly Line[]): string | undefined => {
  if (exceptions.length === 0) return undefined;
  return exceptions.some(({ isNote }) => isNote)
    ? "The gravest first. No result has to be opened for what is “to note”."
    : "The gravest first.";
};

/** What stands out, the gravest first. Said as well when nothing does. */
export function ExceptionList({ exceptions, settled, deviations, note, children }: Props) {
  return (
    <Section title="Stands out" note={noteOf(exceptions)}>
      {note ? <p>Said at submission: {note}</p> : null}
      {exceptions.length === 0 && settled > 0 ? (
        <p>
          <StateMark state="done" label="Nothing more stands out" />: what did ({settled}) was opened and
          signed for.
        </p>
      ) : exceptions.length === 0 ? (
        <p>
          <StateMark state="done" label="Nothing stands out" />: each result is measured and passes or carries
          no statement, the references agree, nothing deviates from the last calibrations, no window was
          moved, nothing was typed.
        </p>
      ) : (
        <ol className="plain-list">
          {exceptions.map((exception) => (
            <li key={`${exception.kind} ${exception.subject} ${exception.text}`}>
              <StateMark state="exception" label={exception.subject} {...markOf(exception)} />{" "}
              {exception.isNote ? <span className="quiet">to note: </span> : null}
              {exception.href ? (
                <Link href={exception.href} data-step>
                  {exception.text}
                </Link>
              ) : (
                exception.text
              )}
              {exception.results > 1 ? <span className="quiet"> ({exception.results} results)</span> : null}
            </li>
          ))}
        </ol>
      )}
      {children}
      {deviations.length > 0 ? (
        <Disclosure summary={`${deviations.length} deviations the certificates will state`}>
          <ul className="plain-list">
            {deviations.map((deviation) => (
              <li key={deviation}>{deviation}</li>
            ))}
          </ul>
        </Disclosure>
      ) : null}
    </Section>
  );
}
