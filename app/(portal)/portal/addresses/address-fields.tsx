import { SelectField } from "@/app/_ui/select-field.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { addressKindLabels, addressKinds } from "@/lib/domain/address/schema";
import type { PortalAddress } from "@/lib/views/portal/addresses";

/** What adding and changing an address share. */
export function AddressFields({ address }: { readonly address?: PortalAddress }) {
  return (
    <>
      <SelectField
        name="kind"
        label="What it is for"
        choices={addressKinds.map((value) => ({ value, label: addressKindLabels[value] }))}
        defaultValue={address?.kind ?? "delivery"}
      />
      <TextField
        name="title"
        label="Short name"
        hint="Such as “Works 2, goods in”."
        maxLength={80}
        defaultValue={address?.title}
      />
      <TextArea name="addressLines" label="Address" rows={4} defaultValue={address?.addressLines} />
      <TextField
        name="contactName"
        label="For the attention of"
        optional
        maxLength={120}
        defaultValue={address?.contactName}
      />
    </>
  );
}
