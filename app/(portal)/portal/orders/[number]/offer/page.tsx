import type { Metadata } from "next";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { OfferContent } from "@/app/(public)/agree/[token]/offer-content";
import { type PortalOffers, portalOffersView } from "@/lib/views/agreement/portal-offers";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { agreeAction } from "../actions";

export const metadata: Metadata = { title: "Our offer" };

type Props = { readonly params: Promise<{ readonly number: string }> };

/** What is agreed to is what stands above: its hash goes with the answer. */
function AgreeForm({ offer }: { readonly offer: PortalOffers["offers"][number] }) {
  return (
    <ActionForm action={agreeAction} label="Answer the offer">
      <input type="hidden" name="quotation" value={offer.number} />
      <input type="hidden" name="contentHash" value={offer.contentHash} />
      <ChoiceField
        name="answer"
        legend="Your answer"
        choices={[
          { value: "agreed", label: "We agree: decision rule, method, points and price as above" },
          { value: "declined", label: "We do not agree" },
        ]}
      />
      <TextField
        name="purchaseOrder"
        label="Your order number"
        optional
        defaultValue={offer.content.order.purchaseOrder}
        maxLength={80}
      />
      <TextArea name="remark" label="Remark" optional rows={3} maxLength={2000} />
      <div className="form-actions">
        <SubmitButton>Send the answer</SubmitButton>
      </div>
    </ActionForm>
  );
}

export default async function PortalOfferPage({ params }: Props) {
  const actor = await requireCustomer();
  const { number } = await params;
  const { offers, mayAgree } = await load(portalOffersView(actor, number, new Date()));
  const offer = offers.find(({ isWaiting }) => isWaiting);
  const trail = [
    { label: "Your orders", href: "/portal/orders" },
    { label: `Order ${number}`, href: `/portal/orders/${number}` },
  ];
  return (
    <Page
      title={offer ? `Offer ${offer.number}` : "Our offer"}
      crumbs={<Breadcrumb trail={trail} />}
      lead={offer ? "Please read it, then say below whether you agree." : undefined}
    >
      {offer ? (
        <>
          <OfferContent content={offer.content} />
          <Section title="Your answer" id="answer">
            {mayAgree ? <AgreeForm offer={offer} /> : <p>A colleague of yours who may order answers this.</p>}
          </Section>
        </>
      ) : (
        <EmptyState title="No offer waits for you">
          It was answered already, its day is over, or the order has changed since.
        </EmptyState>
      )}
    </Page>
  );
}
