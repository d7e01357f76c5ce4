import Link from "next/link";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import type { ReviewRunPage } from "@/lib/views/review-run";

type Props = { readonly exceptions: ReviewRunPage["exceptions"]; readonly note: string };

/** What stands out, the gravest first. Said as well when nothing does. */
export function ExceptionList({ exceptions, note }: Props) {
  return (
    <Section title="Stands out" note={exceptions.length > 0 ? "The gravest first." : undefined}>
      {note ? <p>Said at submission: {note}</p> : null}
      {exceptions.length === 0 ? (
        <p>
          <StateMark state="done" label="Nothing stands out" />: each result is measured and passes or carries
          no statement, the references agree, no window was moved, nothing was typed.
        </p>
      ) : (
        <ol className="plain-list">
          {exceptions.map((exception) => (
            <li key={`${exception.kind} ${exception.subject} ${exception.text}`}>
              <StateMark
                state="exception"
                label={exception.subject}
                tone={exception.kind === "typed" || exception.kind === "window" ? "rest" : "watch"}
              />{" "}
              {exception.href ? (
                <Link href={exception.href} data-step>
                  {exception.text}
                </Link>
              ) : (
                exception.text
              )}
            </li>
          ))}
        </ol>
      )}
    </Section>
  );
}
