import type { Metadata } from "next";
import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { KeyHint } from "@/app/_ui/key-hint";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { reviewQueueView } from "@/lib/views/review-queue";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { AskedFor } from "./asked-for";
import { Returned } from "./returned";
import { StepKeys } from "./step-keys.client";

export const metadata: Metadata = { title: "Review" };

const columns = [
  { key: "run", header: "Run" },
  { key: "stands", header: "Stands out first" },
  { key: "remarks", header: "Open remarks", align: "number" as const },
  { key: "customers", header: "Customers" },
  { key: "sensors", header: "Sensors", align: "number" as const },
  { key: "by", header: "Submitted" },
];

export default async function ReviewPage() {
  const actor = await requirePermission("review.read");
  const { waiting, returned, secondLooks, asked } = await load(reviewQueueView(actor));
  return (
    <Page
      title="Review"
      lead={
        <>
          Runs that wait for a signatory, exceptions first. <KeyHint keys={["j", "k"]} /> move, Enter opens.
        </>
      }
    >
      <StepKeys steps />
      <Section title="Waiting" wide>
        <DataTable
          caption="Runs waiting for review"
          captionUnseen
          columns={columns}
          rows={waiting.map((entry) => ({
            key: entry.number,
            tone: entry.weight >= 60 ? "bad" : entry.exceptions > 0 ? "watch" : undefined,
            cells: {
              run: (
                <Link href={`/review/${entry.number}`} data-step>
                  {entry.number}
                </Link>
              ),
              stands:
                entry.exceptions === 0 ? (
                  <StateMark state="done" label="Nothing stands out" />
                ) : (
                  <>
                    <StateMark state="exception" label={`${entry.exceptions}`} /> {entry.gravest}
                  </>
                ),
              remarks: entry.openRemarks > 0 ? entry.openRemarks : "",
              customers: entry.customers.join(", "),
              sensors: entry.signedOff > 0 ? `${entry.signedOff} of ${entry.sensors} signed` : entry.sensors,
              by: (
                <>
                  {entry.submittedBy}, <Timestamp at={entry.submittedAt} precision="minute" />
                </>
              ),
            },
          }))}
          empty={
            <EmptyState title="Nothing waits for review">
              A run comes here when its technician submits it. What you sign off goes to Certificates.
            </EmptyState>
          }
        />
      </Section>
      <AskedFor asked={asked} />
      {secondLooks.length > 0 ? (
        <Section
          title="Second looks owed"
          note="Signed off by whoever measured, under the laboratory's policy."
        >
          <ul className="plain-list">
            {secondLooks.map((owed) => (
              <li key={owed.number}>
                <Link href={`/certificates/${owed.number}`}>{owed.number}</Link>, signed{" "}
                <Timestamp at={owed.signedAt} precision="day" />: {owed.reason}
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
      <Returned runs={returned} />
    </Page>
  );
}
