import Link from "next/link";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import type { reviewQueueView } from "@/lib/views/review-queue";

type Asked = Awaited<ReturnType<typeof reviewQueueView>>["asked"];

/** Certificates that are to be followed by another, and wait for a signatory who did not ask for it. */
export function AskedFor({ asked }: { readonly asked: Asked }) {
  if (asked.length === 0) return null;
  return (
    <Section title="To amend or replace" note="Signed by another person than the one who asked.">
      <ul className="plain-list">
        {asked.map(({ number, kind, reason, askedAt }) => (
          <li key={number}>
            <Link href={`/certificates/${number}#asked`} data-step>
              {number}
            </Link>
            , {kind} asked for <Timestamp at={askedAt} precision="day" />: {reason}
          </li>
        ))}
      </ul>
    </Section>
  );
}
