import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { FieldError } from "@/app/_ui/field-error.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextField } from "@/app/_ui/text-field.client";
import { roleLabels } from "@/lib/domain/staff/roles";
import { staffRoles } from "@/lib/domain/staff/schema";

const roleHints = {
  "front-desk": "Customers, orders, taking sensors in and handing them back.",
  technician: "Runs: loading, readings, windows, evaluation.",
  signatory: "Reviews results and signs off certificates.",
  "quality-manager": "People, standards and their certificates, the audit log, settings.",
} as const;

type Person = { readonly name: string; readonly email: string; readonly roles: readonly string[] };

export function PersonFields({ person }: { readonly person?: Person }) {
  return (
    <>
      <TextField name="name" label="Name" hint="As it stands on certificates." defaultValue={person?.name} />
      <TextField name="email" label="E-mail address" type="email" defaultValue={person?.email} />
    </>
  );
}

export function RoleFields({ held = [] }: { readonly held?: readonly string[] }) {
  return (
    <FieldGroup legend="Roles in the laboratory" hint="One person may hold several.">
      {staffRoles.map((role) => (
        <CheckboxField
          key={role}
          name="roles"
          value={role}
          label={roleLabels[role]}
          hint={roleHints[role]}
          defaultChecked={held.includes(role)}
        />
      ))}
      <FieldError name="roles" />
    </FieldGroup>
  );
}

export function PasswordField() {
  return (
    <TextField
      name="password"
      label="Initial password"
      type="password"
      autoComplete="new-password"
      hint="At least 12 characters; a few words in a row are good. Tell it by word of mouth; the person then changes it under their name."
    />
  );
}

type NewProps = { readonly customers: readonly { readonly id: string; readonly name: string }[] };

export function NewPersonFields({ customers }: NewProps) {
  return (
    <>
      <PersonFields />
      <RoleFields />
      <SelectField
        name="customerId"
        label="Or a person of a customer"
        hint="Then tick no role above. This cannot be changed later."
        optional
        prompt="Nobody’s: a person of the laboratory"
        choices={customers.map(({ id, name }) => ({ value: id, label: name }))}
      />
    </>
  );
}
