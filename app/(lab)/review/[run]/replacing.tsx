import Link from "next/link";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import type { ReviewRunPage } from "@/lib/views/review-run";

/** A run that is signed off and has results to replace: they are opened here, and signed at the certificate. */
export function Replacing({ review }: { readonly review: ReviewRunPage }) {
  const { duty, evaluation, replacing } = review;
  if (replacing.length === 0) return null;
  const left = duty.mustOpen - duty.opened;
  return (
    <Section
      title="To replace a certificate"
      id="decide"
      note={`Evaluation ${evaluation.sequence} was made after these certificates. Its results are opened here like those of any run. Certificates of the other sensors state an earlier evaluation, and stay.`}
    >
      <ul className="plain-list">
        {replacing.map(({ certificate, tags }) => (
          <li key={certificate}>
            <StateMark
              state={left === 0 ? "done" : "waiting"}
              label={left === 0 ? "You opened what must be" : `${left} to open`}
            />{" "}
            {tags.join(", ")}:{" "}
            <Link href={`/certificates/${certificate}#asked`}>{certificate}, sign there</Link>
          </li>
        ))}
      </ul>
    </Section>
  );
}
