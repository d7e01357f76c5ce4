import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { DateField } from "@/app/_ui/date-field.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { FieldGroup } from "@/app/_ui/field-group";
import { Section } from "@/app/_ui/section";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { amendmentKindLabels, amendmentKinds, correctionLabels } from "@/lib/domain/amendment/amendment";
import { saidNow } from "@/lib/domain/amendment/said-now";
import { protectionLabels, protections } from "@/lib/domain/order/labels";
import type { CertificatePage } from "@/lib/views/certificate-page";
import { askAmendmentAction, withdrawAction } from "../actions";

type Props = { readonly page: CertificatePage };

const inLine = [
  "customerName",
  "customerContact",
  "purchaseOrder",
  "serial",
  "construction",
  "material",
  "condition",
] as const;

/** One line each, with what the certificate says now; what stays empty stays as it is. */
function Fields({ page: { content } }: Props) {
  const now = saidNow(content);
  return (
    <FieldGroup
      legend="What the new certificate says"
      hint="What stays empty stays as it is. Results cannot be typed. This changes the certificate alone: correct the sensor's or the customer's own record too, where it is wrong there."
    >
      {inLine.map((name) => (
        <TextField
          key={name}
          name={`corrections.${name}`}
          label={correctionLabels[name]}
          hint={`Now: ${now[name] || "none"}`}
          optional
          maxLength={300}
        />
      ))}
      <SelectField
        name="corrections.protection"
        label={correctionLabels.protection}
        hint={`Now: ${now.protection}`}
        prompt="As it is"
        choices={protections.map((value) => ({ value, label: protectionLabels[value] }))}
        optional
      />
      <DateField
        name="corrections.receivedOn"
        label={correctionLabels.receivedOn}
        hint={`Now: ${now.receivedOn}`}
        optional
      />
      <TextArea
        name="corrections.customerAddressLines"
        label={correctionLabels.customerAddressLines}
        hint={`One line each. Now: ${now.customerAddressLines}`}
        rows={3}
        optional
      />
      <TextArea
        name="corrections.remark"
        label={correctionLabels.remark}
        hint="A further sentence among the statements, printed as a remark on this change. An opinion or interpretation is none: it is written in the review of a replacement. No recalibration interval, unless agreed with the customer (7.8.4.3)."
        rows={2}
        optional
      />
    </FieldGroup>
  );
}

function Ask({ page }: Props) {
  return (
    <Disclosure summary="Ask for an amendment or a replacement">
      <p className="quiet">
        Whoever asks does not sign: another signatory reads the draft and signs it. Until then{" "}
        {page.content.number} stands.
      </p>
      <ActionForm action={askAmendmentAction} label="Ask for another certificate">
        <input type="hidden" name="certificateId" value={page.id} />
        <ChoiceField
          name="kind"
          legend="What"
          defaultValue="amendment"
          choices={amendmentKinds.map((value) => ({ value, label: amendmentKindLabels[value] }))}
        />
        <TextArea
          name="reason"
          label="Reason"
          hint="It is printed on the new certificate, and the customer reads it."
          rows={2}
        />
        <Fields page={page} />
        <TextField
          name="nonconformity"
          label="Finding it comes from"
          hint="Its number, under Quality."
          optional
          maxLength={40}
        />
        <div className="form-actions">
          <SubmitButton kind="quiet">Ask for it</SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}

function Withdraw({ page }: Props) {
  return (
    <Disclosure summary="Withdraw this certificate">
      <ActionForm action={withdrawAction} label="Withdraw">
        <input type="hidden" name="certificateId" value={page.id} />
        <TextArea
          name="reason"
          label={page.file ? "Why its results are not to be used" : "Why it is never issued"}
          hint="The customer is told by mail that it is withdrawn, and reads this reason in the portal. The public page says at once that it is withdrawn, and no reason."
          rows={2}
        />
        <CheckboxField name="forGood" label={`I withdraw ${page.content.number} for good`} />
        <div className="form-actions">
          <SubmitButton kind="quiet">Withdraw {page.content.number}</SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}

/** ISO/IEC 17025 7.8.8: what can become of a certificate that stands. */
export function AmendForms({ page }: Props) {
  if (!page.mayAmend && !page.mayWithdraw) return null;
  return (
    <Section title="Amend or withdraw" id="amend">
      {page.mayAmend && !page.asked ? <Ask page={page} /> : null}
      {page.mayWithdraw ? <Withdraw page={page} /> : null}
    </Section>
  );
}
