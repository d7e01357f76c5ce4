import type { Metadata } from "next";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { urgencies, urgencyLabels } from "@/lib/domain/order/labels";
import { ruleSetLabels, ruleSets } from "@/lib/domain/order/rule-set";
import { requestFormView } from "@/lib/views/portal/request-form";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { requestAction } from "./actions";
import { CarriedOver } from "./carried-over";
import { KindsEditor } from "./kinds-editor.client";

export const metadata: Metadata = { title: "Request work" };

type Props = {
  readonly searchParams: Promise<{ readonly again?: string | string[]; readonly order?: string | string[] }>;
};

export default async function RequestPage({ searchParams }: Props) {
  const actor = await requirePermission("portal.order");
  const asked = await searchParams;
  const again = [asked.again ?? []].flat();
  const [order] = [asked.order ?? []].flat();
  const { addresses, kinds, wishes, carried, ruleSet } = await load(requestFormView(actor, again, order));
  return (
    <Page
      title="Request work"
      crumbs={<Breadcrumb trail={[{ label: "Your orders", href: "/portal/orders" }]} />}
      lead="Say what is to be calibrated and where. We look at it and come back to you; nothing is agreed until you have our answer."
    >
      <CarriedOver carried={carried} />
      <ActionForm action={requestAction} label="Request work">
        {carried ? <input type="hidden" name="repeats" value={carried.number} /> : null}
        <KindsEditor initial={kinds} />
        <div className="fields">
          <TextField name="purchaseOrder" label="Your order number" optional maxLength={80} />
          <SelectField
            name="urgency"
            label="How urgent"
            choices={urgencies.map((value) => ({ value, label: urgencyLabels[value] }))}
          />
        </div>
        <SelectField
          name="ruleSet"
          label="Rule set you are audited by"
          choices={ruleSets.map((value) => ({ value, label: ruleSetLabels[value] }))}
          defaultValue={ruleSet}
          hint="Audited heat treatment: we agree the largest interval between the temperatures with you, and need lot and roll of each sensor."
        />
        <SelectField
          name="deliveryAddressId"
          label="Send them back to"
          prompt="The address you are known by"
          optional
          choices={addresses.map(({ id, title }) => ({ value: id, label: title }))}
        />
        <TextArea
          name="wishes"
          label="Anything else we should know"
          hint="Serial numbers, dates, how the sensors were used before."
          optional
          defaultValue={wishes}
          maxLength={1800}
        />
        <div className="form-actions">
          <SubmitButton>Send the request</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
