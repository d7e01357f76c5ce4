import { ActionForm } from "@/app/_ui/action-form.client";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { PageTurns } from "@/app/_ui/page-turns";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { readInvoicingQuery } from "@/lib/domain/invoicing/list-query";
import { countText } from "@/lib/domain/list/page";
import { invoicingView } from "@/lib/views/invoicing/invoicing";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { handOverAction } from "./actions";
import { WaitingTable } from "./waiting-table";

export const metadata = { title: "Invoicing" };

type Props = {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export default async function InvoicingPage({ searchParams }: Props) {
  const actor = await requirePermission("invoicing.record");
  const query = readInvoicingQuery(await searchParams);
  const view = await load(invoicingView(actor, new Date(), query));
  return (
    <Page
      title="Invoicing"
      lead="Each finished sensor, and what is asked once for a line or an order, is handed over once: as a CSV file for whoever writes the invoices."
    >
      <Section title="Finished and not handed over">
        <WaitingTable currency={view.currency} rows={view.waiting} />
        <PageTurns
          path="/invoicing"
          query={query}
          next={view.next}
          previous={view.previous}
          of="orders to hand over"
          total={view.count > 0 ? `${countText(view.count)} order${view.count === 1 ? "" : "s"}` : undefined}
        />
        {view.count > 0 ? (
          <ActionForm action={handOverAction} label="Hand over to invoicing" shape="inline">
            <SubmitButton>Hand all of it over</SubmitButton>
          </ActionForm>
        ) : null}
      </Section>
      <Section title="Files">
        <DataTable
          caption="Files handed over"
          captionUnseen
          columns={[
            { key: "number", header: "File" },
            { key: "rows", header: "Rows", align: "number" },
            { key: "at", header: "When" },
          ]}
          rows={view.files.map(({ id, number, rows, madeAt }) => ({
            key: id,
            cells: {
              number: (
                <a href={`/api/invoicing/${id}`} download>
                  {number}
                </a>
              ),
              rows,
              at: <Timestamp at={madeAt} />,
            },
          }))}
          empty={<EmptyState title="No file was made yet">Files stay here, byte for byte.</EmptyState>}
        />
      </Section>
    </Page>
  );
}
