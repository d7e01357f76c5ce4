import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";

type Customer = {
  readonly name: string;
  readonly addressLines: string;
  readonly contactName: string;
  readonly email: string;
};

export function CustomerFields({ customer }: { readonly customer?: Customer }) {
  return (
    <>
      <TextField
        name="name"
        label="Name"
        hint="As it stands on certificates."
        defaultValue={customer?.name}
      />
      <TextArea name="addressLines" label="Postal address" rows={4} defaultValue={customer?.addressLines} />
      <TextField
        name="contactName"
        label="Contact"
        hint="Whom the laboratory writes to."
        defaultValue={customer?.contactName}
      />
      <TextField name="email" label="Contact’s e-mail address" type="email" defaultValue={customer?.email} />
    </>
  );
}
