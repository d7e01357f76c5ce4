import Link from "next/link";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import type { reviewQueueView } from "@/lib/views/review-queue";

type Runs = Awaited<ReturnType<typeof reviewQueueView>>["returned"];

/** Runs that were given back and wait for their technician. */
export function Returned({ runs }: { readonly runs: Runs }) {
  if (runs.length === 0) return null;
  return (
    <Section title="Returned" note="With the technician again.">
      <ul className="plain-list">
        {runs.map((run) => (
          <li key={run.number}>
            <Link href={`/runs/${run.number}`}>{run.number}</Link>
            {run.at ? (
              <>
                , <Timestamp at={run.at} precision="day" />
              </>
            ) : null}
            : {run.reason}
          </li>
        ))}
      </ul>
    </Section>
  );
}
