import type { Metadata } from "next";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { may } from "@/lib/domain/staff/permissions";
import { portalAddressesView } from "@/lib/views/portal/addresses";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { addAddressAction } from "./actions";
import { AddressFields } from "./address-fields";
import { AddressItem } from "./address-item";

export const metadata: Metadata = { title: "Your addresses" };

export default async function AddressesPage() {
  const actor = await requireCustomer();
  const { onRecord, addresses } = await load(portalAddressesView(actor));
  const mayChange = may(actor.roles, "portal.manage");
  return (
    <Page
      title="Your addresses"
      lead="Choose one of them when you request work. Orders that are under way keep the address they were given."
    >
      <Section title="As you stand on certificates" note="The laboratory changes it for you.">
        <p className="lines">
          {`${onRecord.name}\n${onRecord.addressLines}`}
          {onRecord.contactName ? `\nFor the attention of ${onRecord.contactName}` : ""}
        </p>
      </Section>
      <Section title="Others">
        {addresses.length === 0 ? <p>None yet.</p> : null}
        <ul className="stack plain-list">
          {addresses.map((address) => (
            <AddressItem key={address.id} address={address} mayChange={mayChange} />
          ))}
        </ul>
      </Section>
      {mayChange ? (
        <Section title="Add an address">
          <ActionForm action={addAddressAction} label="Add an address">
            <AddressFields />
            <div className="form-actions">
              <SubmitButton>Add it</SubmitButton>
            </div>
          </ActionForm>
        </Section>
      ) : null}
    </Page>
  );
}
