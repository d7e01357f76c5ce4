import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { FieldList } from "@/app/_ui/field-list";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { isoDay } from "@/lib/domain/calibration/due";
import { equipmentKindLabels, equipmentStateLabels } from "@/lib/domain/equipment/labels";
import { equipmentStates } from "@/lib/domain/equipment/types";
import { equipmentView } from "@/lib/views/equipment";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { setEquipmentStateAction } from "../actions";
import { CertificatesSection } from "../certificates-section";
import { DueMark, EquipmentStateMark } from "../marks";
import { particularsItems } from "../particulars-items";

export const metadata = { title: "Equipment" };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function EquipmentPage({ params }: Props) {
  const actor = await requireStaff();
  const view = await load(equipmentView(actor, (await params).id, isoDay(new Date())));
  const { equipment, calibrations } = view;
  const here = `/standards/${equipment.id}`;
  const mayCalibrate = view.mayCalibrate && equipment.state !== "retired";
  return (
    <Page
      title={equipment.tag}
      crumbs={<Breadcrumb trail={[{ label: "Standards", href: "/standards" }]} />}
      state={
        <>
          <DueMark due={view.due} />
          <EquipmentStateMark state={equipment.state} />
        </>
      }
      lead={`${equipmentKindLabels[equipment.kind]}, ${[equipment.maker, equipment.model].filter(Boolean).join(", ")}, serial number ${equipment.serial}`}
      actions={
        <>
          <LinkButton href={`/trace/standard/${equipment.id}`} kind="quiet">
            Traceability
          </LinkButton>
          {view.mayChange ? <LinkButton href={`${here}/edit`}>Change the record</LinkButton> : null}
          {mayCalibrate ? (
            <LinkButton href={`${here}/calibrations/new`} kind="primary">
              Record a certificate
            </LinkButton>
          ) : null}
        </>
      }
    >
      <Section title="For the budget">
        <FieldList items={particularsItems(equipment.particulars)} />
      </Section>
      <CertificatesSection
        equipmentId={equipment.id}
        calibrations={calibrations}
        inForceId={view.inForceId}
        mayAdopt={view.mayAdopt}
      />
      {view.mayChange && equipment.state !== "retired" ? (
        <Section title="State" note="Suspect and retired equipment is not offered for runs.">
          <ActionForm action={setEquipmentStateAction} label="Set its state">
            <input type="hidden" name="id" value={equipment.id} />
            <input type="hidden" name="version" value={equipment.version} />
            <SelectField
              name="state"
              label="State"
              prompt="Choose the new state"
              choices={equipmentStates
                .filter((state) => state !== equipment.state)
                .map((state) => ({ value: state, label: equipmentStateLabels[state] }))}
            />
            <TextField name="reason" label="Why" />
            <div className="form-actions">
              <SubmitButton kind="quiet">Set the state</SubmitButton>
            </div>
          </ActionForm>
        </Section>
      ) : null}
    </Page>
  );
}
