import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { DateField } from "@/app/_ui/date-field.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { isoDay } from "@/lib/domain/calibration/due";
import { routeLabels } from "@/lib/domain/calibration/labels";
import { routes } from "@/lib/domain/calibration/types";
import { equipmentView } from "@/lib/views/equipment";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { recordCalibrationAction } from "../../../actions";
import { FindingsFields } from "../../../findings-fields";

export const metadata = { title: "Record a certificate" };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function NewCalibrationPage({ params }: Props) {
  const actor = await requirePermission("calibration.record");
  const { equipment } = await load(equipmentView(actor, (await params).id, isoDay(new Date())));
  const trail = [
    { label: "Standards", href: "/standards" },
    { label: equipment.tag, href: `/standards/${equipment.id}` },
  ];
  return (
    <Page
      title={`Record a certificate of ${equipment.tag}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead="As the certificate states it. It cannot be changed afterwards: look twice before you record it."
    >
      <ActionForm action={recordCalibrationAction} label="Record a certificate">
        <input type="hidden" name="equipmentId" value={equipment.id} />
        <TextField name="certificate" label="Certificate number" />
        <TextField name="issuer" label="Issued by" />
        <TextField
          name="accreditation"
          label="Accreditation"
          hint="The issuer’s number, if it has one."
          optional
        />
        <SelectField
          name="route"
          label="How it reaches the SI"
          prompt="Choose the route"
          choices={routes.map((value) => ({ value, label: routeLabels[value] }))}
        />
        <DateField name="performedOn" label="Performed on" />
        <DateField name="dueOn" label="Due again on" hint="Set by the laboratory, from its own history." />
        <FieldGroup legend="What it found">
          <FindingsFields kind={equipment.kind} />
        </FieldGroup>
        <div className="form-actions">
          <SubmitButton>Record the certificate</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
