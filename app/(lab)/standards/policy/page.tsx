import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { FieldList } from "@/app/_ui/field-list";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { servicePolicyLabels } from "@/lib/domain/equipment/labels";
import { servicePolicyKeys } from "@/lib/domain/equipment/service-policy";
import { servicePolicyView } from "@/lib/views/service-policy";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { changeServicePolicyAction } from "../actions";

export const metadata = { title: "When it blocks" };

const answers = [
  { value: "block", label: "It cannot be chosen for a run" },
  { value: "warn", label: "Whoever chooses it is warned, at the gate" },
];

const answerWords = (value: string): string => answers.find((one) => one.value === value)?.label ?? value;

export default async function ServicePolicyPage() {
  const actor = await requireStaff();
  const { policy, version, mayChange } = await load(servicePolicyView(actor));
  return (
    <Page
      title="When it blocks"
      crumbs={<Breadcrumb trail={[{ label: "Standards", href: "/standards" }]} />}
      lead="What follows where equipment in service has something against it: the laboratory’s own rule. Suspect equipment, and equipment whose calibration is not in date, can never be chosen."
    >
      {mayChange ? (
        <ActionForm action={changeServicePolicyAction} label="Change the rule">
          <input type="hidden" name="version" value={version} />
          {servicePolicyKeys.map((key) => (
            <ChoiceField
              key={key}
              name={`policy.${key}`}
              legend={servicePolicyLabels[key]}
              choices={answers}
              defaultValue={policy[key]}
            />
          ))}
          <TextField name="reason" label="Why" />
          <div className="form-actions">
            <SubmitButton>Save the rule</SubmitButton>
          </div>
        </ActionForm>
      ) : (
        <FieldList
          items={servicePolicyKeys.map((key) => ({
            label: servicePolicyLabels[key],
            value: answerWords(policy[key]),
          }))}
        />
      )}
    </Page>
  );
}
