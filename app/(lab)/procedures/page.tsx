import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import { proceduresView } from "@/lib/views/procedures";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";

export const metadata = { title: "Procedures" };

export default async function ProceduresPage() {
  const actor = await requireStaff();
  const view = await load(proceduresView(actor));
  return (
    <Page
      title="Procedures"
      lead="What a run brings to its budget beside the certificates of the equipment. A run follows the revision that is current when it is made, and keeps it."
      actions={view.mayDraft ? <LinkButton href="/procedures/new">Draft a procedure</LinkButton> : null}
    >
      <DataTable
        caption="Procedures"
        captionUnseen
        columns={[
          { key: "title", header: "Procedure" },
          { key: "current", header: "Current revision" },
          { key: "from", header: "Since" },
          { key: "draft", header: "Being written" },
        ]}
        rows={view.procedures.map(({ key, title, current, draft }) => ({
          key,
          cells: {
            title: <Link href={`/procedures/${key}`}>{title}</Link>,
            current: current ? `Revision ${current.revision}` : <StateMark state="open" label="None" />,
            from: current ? <Timestamp at={current.from} precision="day" /> : "",
            draft:
              draft === null ? (
                ""
              ) : (
                <Link href={`/procedures/${key}/draft`}>
                  <StateMark state="draft" label={`Draft of revision ${draft}`} />
                </Link>
              ),
          },
        }))}
        empty={
          <EmptyState title="No procedure is recorded">
            Starting the platform again brings in those that come with it.
          </EmptyState>
        }
      />
    </Page>
  );
}
