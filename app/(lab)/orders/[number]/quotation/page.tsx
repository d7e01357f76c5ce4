import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { DataTable } from "@/app/_ui/data-table";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { orderOffersView } from "@/lib/views/quotation/order-offers";
import { sentView } from "@/lib/views/shipment/sent";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { PaperList } from "../paper-list";
import { AcknowledgeForm, MakeOfferForm } from "./offer-forms";
import { OfferTable } from "./offer-table";
import { SentNotice } from "./sent-notice";

export const metadata = { title: "Offers of an order" };

type Props = {
  readonly params: Promise<{ readonly number: string }>;
  readonly searchParams: Promise<{ readonly sent?: string | string[] }>;
};

export default async function QuotationPage({ params, searchParams }: Props) {
  const actor = await requireStaff();
  const view = await load(orderOffersView(actor, (await params).number, new Date()));
  const sent = await load(sentView(actor, view.number, String((await searchParams).sent ?? "")));
  const trail = [
    { label: "Orders", href: "/orders" },
    { label: view.number, href: `/orders/${view.number}` },
  ];
  const { price, currency } = view;
  return (
    <Page
      title={`Offers of ${view.number}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead="What the customer agrees to by a link from the mail: decision rule, method, points and price."
    >
      <Section title="Price by today’s list" wide>
        {price.missing.length > 0 ? (
          <Notice kind="info" title="Something has no price yet">
            {price.missing.join("; ")}. <Link href="/prices#record">Record it in the list</Link>; nought is a
            price too.
          </Notice>
        ) : null}
        <DataTable
          caption="Price by today’s list"
          captionUnseen
          columns={[
            { key: "what", header: "What" },
            { key: "quantity", header: "Quantity", align: "number" },
            { key: "unit", header: "Price", unit: currency, align: "number" },
            { key: "amount", header: "Amount", unit: currency, align: "number" },
          ]}
          rows={price.lines.map((line) => ({
            key: line.key,
            cells: {
              what: line.position === null ? line.title : `${line.title}, line ${line.position}`,
              quantity: line.quantity,
              unit: line.unit,
              amount: line.amount,
            },
          }))}
          {...(price.total === null
            ? {}
            : {
                foot: {
                  key: "sum",
                  cells: { what: "Sum, without tax", amount: <strong>{price.total}</strong> },
                },
              })}
        />
      </Section>
      <Section title="Offers" id="offers" wide>
        <OfferTable view={view} />
      </Section>
      {view.mayOffer ? (
        <Section
          title="Make an offer"
          note="It is mailed to whoever asked for the work and to the customer’s contact. A later one replaces it."
        >
          <MakeOfferForm view={view} />
        </Section>
      ) : null}
      <Section title="Papers" id="papers">
        <SentNotice order={view.number} sent={sent} />
        <PaperList papers={view.papers} />
        {view.mayAcknowledge ? <AcknowledgeForm number={view.number} /> : null}
      </Section>
    </Page>
  );
}
