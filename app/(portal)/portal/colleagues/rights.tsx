import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { FieldError } from "@/app/_ui/field-error.client";
import { FieldGroup } from "@/app/_ui/field-group";

/** What somebody may do beyond reading, in plain words. */
export function Rights({ mayOrder, mayManage }: { readonly mayOrder: boolean; readonly mayManage: boolean }) {
  return (
    <FieldGroup legend="May also" hint="Everybody of you reads orders and certificates.">
      <CheckboxField
        name="roles"
        value="customer-orderer"
        label="Request work, answer questions, agree to offers"
        hint="Letters about your orders go to whoever has this."
        defaultChecked={mayOrder}
      />
      <CheckboxField
        name="roles"
        value="customer-manager"
        label="Invite colleagues, keep addresses, intervals and programs"
        defaultChecked={mayManage}
      />
      <FieldError name="roles" />
    </FieldGroup>
  );
}
