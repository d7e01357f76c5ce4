import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { addressKindLabels } from "@/lib/domain/address/schema";
import type { PortalAddress } from "@/lib/views/portal/addresses";
import { changeAddressAction, setAddressActiveAction } from "./actions";
import { AddressFields } from "./address-fields";

const row = ({ id, version }: PortalAddress) => (
  <>
    <input type="hidden" name="id" value={id} />
    <input type="hidden" name="version" value={version} />
  </>
);

/** One address; whoever may, changes it or takes it out of use. */
export function AddressItem({
  address,
  mayChange,
}: {
  readonly address: PortalAddress;
  readonly mayChange: boolean;
}) {
  return (
    <li>
      <h3>{address.title}</h3>
      <p className="quiet">
        {addressKindLabels[address.kind]}
        {address.active ? "" : ", no longer in use"}
      </p>
      <p className="lines">
        {address.contactName ? `${address.contactName}\n` : ""}
        {address.addressLines}
      </p>
      {mayChange ? (
        <>
          <Disclosure summary={`Change ${address.title}`}>
            <ActionForm action={changeAddressAction} label={`Change ${address.title}`}>
              {row(address)}
              <AddressFields address={address} />
              <div className="form-actions">
                <SubmitButton>Save</SubmitButton>
              </div>
            </ActionForm>
          </Disclosure>
          <ActionForm action={setAddressActiveAction} shape="inline" label={`Use of ${address.title}`}>
            {row(address)}
            <input type="hidden" name="active" value={address.active ? "no" : "yes"} />
            <SubmitButton kind="quiet">
              {address.active ? `Take ${address.title} out of use` : `Use ${address.title} again`}
            </SubmitButton>
          </ActionForm>
        </>
      ) : null}
    </li>
  );
}
