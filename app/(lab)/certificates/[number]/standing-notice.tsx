import Link from "next/link";
import { AskAgain } from "@/app/_ui/ask-again.client";
import { EndedNotice } from "@/app/_ui/ended-notice";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import type { CertificatePage } from "@/lib/views/certificate-page";

type Props = { readonly page: CertificatePage };

const follows = { amendment: "Amends", replacement: "Replaces" } as const;

/** Why its document is not there yet, where a step did not succeed. */
function Attempts({ page: { attempts } }: Props) {
  if (attempts.length === 0) return null;
  return (
    <Section
      title="Steps that failed"
      note="The number is kept, and the step is tried again by itself, at longer and longer intervals and at each start. Where it can never succeed, ask for an amendment that says it otherwise, or withdraw the certificate: both are below."
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
      <EndedNotice number={page.content.number} standing={page.standing} />
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
