"use client";
import { Hash } from "@/app/_ui/hash";
import { StateMark } from "@/app/_ui/state-mark";
import type { FileVerdict } from "@/lib/documents/authenticity/verdict";
import { verdictWords } from "@/lib/documents/authenticity/verdict-words";
import type { WholeVerdict } from "@/lib/documents/authenticity/whole-verdict";

type Props = { readonly name: string; readonly whole: WholeVerdict; readonly file: FileVerdict };

const marks = {
  passed: { shape: "disc", tone: "good" },
  failed: { shape: "square", tone: "bad" },
  unknown: { shape: "open-diamond", tone: "watch" },
  skipped: { shape: "dash", tone: "rest" },
} as const;

/** The verdict in words with its reason, and each check by word and shape. */
export function VerdictCard({ name, whole, file }: Props) {
  const words = verdictWords(whole, file);
  return (
    <section className="verdict" data-kind={whole.kind} aria-label="Verdict on the file">
      <h3 className="standing-word">
        <span className="standing-shape" aria-hidden="true" />
        <strong>{whole.title}</strong>
      </h3>
      <p>{whole.reason}</p>
      <p className="quiet">
        {name}: {words.formal}
      </p>
      {words.facts.length === 0 ? null : (
        <dl className="facts">
          {words.facts.map(({ label, value }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      {words.key ? (
        <div className="stack">
          <p>{words.key.text}</p>
          <Hash value={words.key.fingerprint} length={64} label="Fingerprint of the key" />
        </div>
      ) : null}
      <ul className="checks" aria-label="What was checked">
        {whole.checks.map((check) => (
          <li key={check.key}>
            <StateMark state={check.state} label={words.states[check.state]} {...marks[check.state]} />
            <div>
              <strong>{check.label}</strong>
              <p>{check.text}</p>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
