import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";

type Laboratory = {
  readonly name: string;
  readonly addressLines: string;
  readonly contact: string;
  readonly accreditationText: string;
  readonly accreditationNumber: string;
  readonly countryCode: string;
  readonly performerMaySignOff: boolean;
};

type Props = { readonly laboratory?: Laboratory; readonly prefix?: string };

export function LaboratoryFields({ laboratory, prefix = "" }: Props) {
  return (
    <>
      <TextField
        name={`${prefix}name`}
        label="Name"
        hint="As it stands at the head of every certificate."
        defaultValue={laboratory?.name}
        maxLength={160}
      />
      <TextArea
        name={`${prefix}addressLines`}
        label="Postal address"
        rows={4}
        defaultValue={laboratory?.addressLines}
        maxLength={400}
      />
      <TextField
        name={`${prefix}countryCode`}
        label="Country"
        hint="Two letters, such as GB (ISO 3166-1)."
        defaultValue={laboratory?.countryCode}
        maxLength={2}
      />
      <TextField
        name={`${prefix}contact`}
        label="How customers reach you"
        hint="A telephone number or an e-mail address."
        defaultValue={laboratory?.contact}
        maxLength={200}
      />
      <TextArea
        name={`${prefix}accreditationText`}
        label="Accreditation, in the words you may use"
        hint="Printed as it stands, where at least one result lies within the scope. Leave it empty to claim none: accreditation is given by a body, never by a program."
        rows={3}
        optional
        defaultValue={laboratory?.accreditationText}
        maxLength={600}
      />
      <TextField
        name={`${prefix}accreditationNumber`}
        label="Accreditation number"
        hint="As the body gave it; printed with the words above."
        optional
        defaultValue={laboratory?.accreditationNumber}
        maxLength={80}
      />
      <CheckboxField
        name={`${prefix}performerMaySignOff`}
        label="Whoever measured may also sign off"
        hint="For a laboratory of two. Each such sign-off is recorded as an exception and asks for a later second look."
        defaultChecked={laboratory?.performerMaySignOff}
      />
    </>
  );
}
