import Link from "next/link";
import { ActionForm } from "@/app/_ui/action-form.client";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { invoicingView } from "@/lib/views/invoicing/invoicing";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { handOverAction } from "./actions";

export const metadata = { title: "Invoicing" };

export default async function InvoicingPage() {
  const view = await load(invoicingView(await requirePermission("invoicing.record"), new Date()));
  return (
    <Page
      title="Invoicing"
      lead="Each finished sensor, and what is asked once for a line or an order, is handed over once: as a CSV file for whoever writes the invoices."
    >
      <Section title="Finished and not handed over">
        {view.unpriced.length > 0 ? (
          <Notice kind="info" title="Some orders have no price for all they ask">
            {view.unpriced.map(({ number, missing }) => `${number}: ${missing.join("; ")}`).join(". ")}.{" "}
            <Link href="/prices#record">Record it in the list</Link>.
          </Notice>
        ) : null}
        <DataTable
          caption="Orders to hand over"
          captionUnseen
          columns={[
            { key: "order", header: "Order" },
            { key: "customer", header: "Customer" },
            { key: "rows", header: "Rows", align: "number" },
            { key: "amount", header: "Amount", unit: view.currency, align: "number" },
          ]}
          rows={view.waiting.map(({ number, customer, rows, amount }) => ({
            key: number,
            cells: { order: <Link href={`/orders/${number}`}>{number}</Link>, customer, rows, amount },
          }))}
          empty={<EmptyState title="Nothing waits">What gets its certificate next stands here.</EmptyState>}
        />
        {view.waiting.length > 0 ? (
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
