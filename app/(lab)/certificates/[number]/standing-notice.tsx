import Link from "next/link";
import { AskAgain } from "@/app/_ui/ask-again.client";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import { hasEnded } from "@/lib/domain/certificate/standing";
import type { CertificatePage } from "@/lib/views/certificate-page";

type Props = { readonly page: CertificatePage };

const follows = { amendment: "Amends", replacement: "Replaces" } as const;

function Ended({ page: { content, standing } }: Props) {
  if (!hasEnded(standing)) return null;
  const { kind } = standing;
  return (
    <Notice kind="caution" title={kind === "withdrawn" ? "Caution: withdrawn" : `Caution: ${kind}`}>
      {kind === "withdrawn" ? (
        "The results of this certificate are not to be used."
      ) : (
        <>
          <Link href={`/certificates/${standing.successor}`}>{standing.successor}</Link> counts instead of{" "}
          {content.number}.
        </>
      )}{" "}
      Since <Timestamp at={standing.at} precision="minute" />. Reason: {standing.reason}
    </Notice>
  );
}

/** Why its document is not there yet, where a step did not succeed. */
function Attempts({ page: { attempts } }: Props) {
  if (attempts.length === 0) return null;
  return (
    <Section
      title="Steps that failed"
      note="The number is kept, and the step is tried again by itself, at longer and longer intervals and at each start."
    >
      <ul className="plain-list">
        {attempts.map(({ at, detail, key, step }) => (
          <li key={key}>
            <Timestamp at={at} precision="minute" />: {step}. {detail}
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** What became of it, what it follows, and what keeps its document from being made. */
export function StandingNotice({ page }: Props) {
  const { amends } = page.content;
  return (
    <>
      {page.standing.kind === "pending" ? <AskAgain /> : null}
      <Ended page={page} />
      {amends ? (
        <p>
          {follows[amends.kind]} <Link href={`/certificates/${amends.number}`}>{amends.number}</Link>:{" "}
          {amends.reason}
        </p>
      ) : null}
      <Attempts page={page} />
    </>
  );
}
