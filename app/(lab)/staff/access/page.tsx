import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { roleLabels, roles } from "@/lib/domain/staff/roles";
import { accountPolicyView } from "@/lib/views/account-policy";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { changeAccountPolicyAction } from "./actions";
import { SigningSection } from "./signing-section";

export const metadata = { title: "How people are let in" };

export default async function AccessPage() {
  const actor = await requirePermission("laboratory.configure");
  const { policy, signing, version } = await load(accountPolicyView(actor));
  return (
    <Page
      title="How people are let in"
      crumbs={<Breadcrumb trail={[{ label: "Staff", href: "/staff" }]} />}
      lead="The laboratory’s own rule for sign-in. The figures a new installation starts from are common practice, without a source."
    >
      <ActionForm action={changeAccountPolicyAction} label="How people are let in">
        <input type="hidden" name="version" value={version} />
        <NumberField
          name="policy.lockAfter"
          label="Wrong tries in a row that lock an account"
          hint="5 to 100. The owner is told by mail."
          defaultValue={policy.lockAfter}
        />
        <NumberField
          name="policy.lockMinutes"
          label="How long it stays locked"
          unit="min"
          defaultValue={policy.lockMinutes}
        />
        <NumberField
          name="policy.idleMinutes"
          label="A session nobody uses ends after"
          unit="min"
          hint="Not at the bench. Every session ends after twelve hours."
          defaultValue={policy.idleMinutes}
        />
        <FieldGroup
          legend="Who gives a one-time code at each sign-in"
          hint="Advised for signatories and quality managers. Whoever has none yet sets it up before anything else opens."
        >
          {roles.map((role) => (
            <CheckboxField
              key={role}
              name="policy.secondFactorRoles"
              value={role}
              label={roleLabels[role]}
              defaultChecked={policy.secondFactorRoles.includes(role)}
            />
          ))}
        </FieldGroup>
        <div className="form-actions">
          <SubmitButton>Save</SubmitButton>
        </div>
      </ActionForm>
      <SigningSection policy={signing} version={version} />
    </Page>
  );
}
