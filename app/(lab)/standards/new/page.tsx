import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { FieldGroup } from "@/app/_ui/field-group";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { Tabs } from "@/app/_ui/tabs";
import { TextField } from "@/app/_ui/text-field.client";
import { equipmentKindLabels } from "@/lib/domain/equipment/labels";
import { equipmentKinds } from "@/lib/domain/equipment/types";
import { requirePermission } from "@/lib/web/auth";
import { recordEquipmentAction } from "../actions";
import { DescribedFields, ParticularsFields } from "../equipment-fields";
import { RecordFields } from "../record-fields";

export const metadata = { title: "Record equipment" };

/** A furnace is recorded under Furnaces, with its tube and its range. */
const recordedHere = equipmentKinds.filter((kind) => kind !== "furnace");

type Props = { readonly searchParams: Promise<{ readonly kind?: string | string[] }> };

export default async function NewEquipmentPage({ searchParams }: Props) {
  await requirePermission("equipment.record");
  const asked = (await searchParams).kind;
  const kind = recordedHere.find((known) => known === asked) ?? "reference";
  return (
    <Page
      title={`Record a ${equipmentKindLabels[kind].toLowerCase()}`}
      crumbs={<Breadcrumb trail={[{ label: "Standards", href: "/standards" }]} />}
      lead="Its certificates are recorded afterwards, each as it comes."
    >
      <Tabs
        label="Kind of equipment"
        current={`/standards/new?kind=${kind}`}
        tabs={recordedHere.map((one) => ({
          label: equipmentKindLabels[one],
          href: `/standards/new?kind=${one}`,
        }))}
      />
      <ActionForm key={kind} action={recordEquipmentAction} label="Record equipment">
        <TextField
          name="tag"
          label="Tag"
          hint="What stands on it and what people say, such as REF-01. It stays."
        />
        <DescribedFields />
        <FieldGroup legend="Record">
          <RecordFields kind={kind} />
        </FieldGroup>
        <FieldGroup legend="For the uncertainty budget">
          <ParticularsFields kind={kind} />
        </FieldGroup>
        <div className="form-actions">
          <SubmitButton>Record it</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
