import Link from "next/link";
import { FieldList } from "@/app/_ui/field-list";
import { LinkButton } from "@/app/_ui/link-button";
import { Section } from "@/app/_ui/section";
import type { OrderCommerce as View } from "@/lib/views/quotation/order-commerce";
import { PaperList } from "./paper-list";

const answers = { agreed: "agreed", declined: "declined", waiting: "waiting for the customer" } as const;

/** Promised day, offer, papers and parcels of an order, and the ways to make them. */
export function OrderCommerce({ number, view }: { readonly number: string; readonly view: View }) {
  const here = `/orders/${number}`;
  const { offer } = view;
  return (
    <Section title="Offer, promise, return" id="commerce">
      <FieldList
        items={[
          { label: "Promised for", value: view.promisedOn ?? "nothing yet" },
          {
            label: "Offer",
            value: offer
              ? `${offer.number}, ${answers[offer.answer]}${offer.by ? ` by ${offer.by}` : ""}`
              : "none",
          },
          ...(view.issued > 0 ? [{ label: "Finished, still here", value: view.issued }] : []),
          ...(view.repeats
            ? [{ label: "Repeats", value: <Link href={`/orders/${view.repeats}`}>{view.repeats}</Link> }]
            : []),
          { label: "Papers", value: <PaperList papers={view.papers} /> },
        ]}
      />
      <div className="form-actions">
        {view.mayOffer ? <LinkButton href={`${here}/quotation`}>Offer and price</LinkButton> : null}
        {view.mayPromise ? <LinkButton href={`${here}/promise`}>Promise a day</LinkButton> : null}
        {view.mayShip ? <LinkButton href={`${here}/ship`}>Send sensors back</LinkButton> : null}
        {view.mayRepeat ? <LinkButton href={`${here}/repeat`}>Repeat the order</LinkButton> : null}
      </div>
    </Section>
  );
}
