"use client";
import { fillBeside } from "@/lib/domain/authenticity/even-length";
import type { PublicStatus } from "@/lib/domain/authenticity/public-status";
import { statusWords } from "@/lib/domain/authenticity/status-words";

type Props = {
  readonly status: PublicStatus;
  /** Found in the browser alone: what is said here is then not said of the paper, and looks like no verdict on it. */
  readonly isPaperOther?: boolean;
};

/**
 * How the certificate stands. One tree for every state, filled up to one length: see even-length. The shape beside the
 * word is drawn by the stylesheet for that reason.
 */
export function StatusCard({ status, isPaperOther = false }: Props) {
  const words = statusWords(status);
  return (
    <div className="standing" data-standing={isPaperOther ? "of-another-paper" : status.standing}>
      <p className="standing-word">
        <span className="standing-shape" aria-hidden="true" />
        <strong>{isPaperOther ? `${status.number} itself: ${words.word.toLowerCase()}` : words.word}</strong>
      </p>
      <p className="standing-sentence">{words.sentence}</p>
      <dl className="facts">
        {words.rows.map(({ label, value, href }) => (
          <div key={label} data-empty={value === "—" ? "y" : "n"}>
            <dt>{label}</dt>
            <dd>
              <a href={href}>{value}</a>
            </dd>
          </div>
        ))}
      </dl>
      <i hidden data-fill={fillBeside(status.standing, words)} />
    </div>
  );
}
