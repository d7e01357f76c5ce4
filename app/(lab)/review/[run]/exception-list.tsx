import Link from "next/link";
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

/** What stands out, the gravest first. Said as well when nothing does. */
export function ExceptionList({ exceptions, settled, deviations, note }: Props) {
  return (
    <Section title="Stands out" note={exceptions.length > 0 ? "The gravest first." : undefined}>
      {note ? <p>Said at submission: {note}</p> : null}
      {exceptions.length === 0 && settled > 0 ? (
        <p>
          <StateMark state="done" label="Nothing more stands out" />: what did ({settled}) was opened and
          signed for; it is marked at its numbers.
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
              <StateMark
                state="exception"
                label={exception.subject}
                tone={tones[exception.kind] ?? "watch"}
              />{" "}
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
