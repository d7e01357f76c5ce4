import Link from "next/link";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import { entryKindLabels } from "@/lib/domain/nonconformity/labels";
import type { NonconformityPage } from "@/lib/views/nonconformity/nonconformity";
import { ImpactTable } from "./impact-table";

/** From the report to now, in the order of time. */
export function Story({ page }: { readonly page: NonconformityPage }) {
  return (
    <Section title="Story" wide>
      <ol className="list">
        <li>
          <strong>Reported</strong>{" "}
          <span className="quiet">
            {page.openedBy}, <Timestamp at={page.openedAt} />
          </span>
          <p>{page.description}</p>
        </li>
        {page.entries.map((entry) => (
          <li key={entry.key}>
            <strong>{entryKindLabels[entry.kind]}</strong>{" "}
            <span className="quiet">
              {entry.saidBy}, <Timestamp at={entry.saidAt} />
            </span>
            <p>{entry.text}</p>
            {entry.figures.sensors ? <p>Stopped: {entry.figures.sensors.join(", ")}.</p> : null}
            <ImpactTable figures={entry.figures} />
            {entry.signedSince.length === 0 ? null : (
              <p>
                As it stood then. Of these runs signed since:{" "}
                {entry.signedSince.map((certificate) => (
                  <span key={certificate}>
                    <Link href={`/certificates/${certificate}`}>{certificate}</Link>{" "}
                  </span>
                ))}
              </p>
            )}
          </li>
        ))}
      </ol>
    </Section>
  );
}
