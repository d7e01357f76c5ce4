import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { FieldGroup } from "@/app/_ui/field-group";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { isoDay } from "@/lib/domain/calibration/due";
import { equipmentView } from "@/lib/views/equipment";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { changeEquipmentAction } from "../../actions";
import { DescribedFields, ParticularsFields } from "../../equipment-fields";
import { RecordFields } from "../../record-fields";

export const metadata = { title: "Change equipment" };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function EditEquipmentPage({ params }: Props) {
  const actor = await requirePermission("equipment.record");
  const { equipment } = await load(equipmentView(actor, (await params).id, isoDay(new Date())));
  const trail = [
    { label: "Standards", href: "/standards" },
    { label: equipment.tag, href: `/standards/${equipment.id}` },
  ];
  return (
    <Page
      title={`Change ${equipment.tag}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead="Results evaluated before keep the figures they were evaluated with; the audit log keeps the old ones."
    >
      <ActionForm action={changeEquipmentAction} label="Change equipment">
        <input type="hidden" name="id" value={equipment.id} />
        <input type="hidden" name="version" value={equipment.version} />
        <DescribedFields equipment={equipment} />
        <FieldGroup legend="Record">
          <RecordFields kind={equipment.kind} equipment={equipment} />
        </FieldGroup>
        {equipment.kind === "furnace" ? (
          <ParticularsFields kind={equipment.kind} particulars={equipment.particulars} />
        ) : (
          <FieldGroup legend="For the uncertainty budget">
            <ParticularsFields kind={equipment.kind} particulars={equipment.particulars} />
          </FieldGroup>
        )}
        <div className="form-actions">
          <SubmitButton>Save</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
