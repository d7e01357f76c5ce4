import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { ChoiceField } from "@/app/_ui/choice-field.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { isoDay } from "@/lib/domain/calibration/due";
import { configurationKindLabels } from "@/lib/domain/furnace/labels";
import { configurationKinds } from "@/lib/domain/furnace/types";
import { furnaceView } from "@/lib/views/furnace";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { recordConfigurationAction } from "../../../actions";
import { RowGrid } from "../../../row-grid.client";

export const metadata = { title: "Record a configuration" };

const boreColumns = [
  { key: "number", header: "Number", isText: true },
  { key: "diameterMillimetre", header: "Diameter", unit: "mm" },
  { key: "xMillimetre", header: "Right", unit: "mm" },
  { key: "yMillimetre", header: "Down", unit: "mm" },
];

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function NewConfigurationPage({ params }: Props) {
  const actor = await requirePermission("furnace.record");
  const furnace = await load(furnaceView(actor, (await params).id, isoDay(new Date())));
  const trail = [
    { label: "Furnaces", href: "/furnaces" },
    { label: furnace.tag, href: `/furnaces/${furnace.id}` },
  ];
  return (
    <Page
      title={`Record a configuration of ${furnace.tag}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead="One way in which the furnace is used. Another block, another depth or another number of places is another configuration, with its own characterisation."
    >
      <ActionForm action={recordConfigurationAction} label="Record a configuration">
        <input type="hidden" name="furnaceId" value={furnace.id} />
        <TextField name="name" label="Name" hint="Such as Alumina block, 8 bores." />
        <ChoiceField
          name="kind"
          legend="Kind"
          choices={configurationKinds.map((value) => ({ value, label: configurationKindLabels[value] }))}
        />
        <NumberField name="places" label="Places" hint="How many thermocouples fit, references included." />
        <NumberField
          name="immersionMillimetre"
          label="Immersion"
          unit="mm"
          hint="From the mouth of the tube to the measuring junctions."
        />
        <NumberField
          name="bundleDiameterMillimetre"
          label="Thickest bundle"
          unit="mm"
          optional
          hint="Of a bare tube: as thick as it is characterised for."
        />
        <RowGrid
          name="bores"
          legend="Bores of a block"
          hint="From the middle of the block, seen from the mouth of the tube. Left empty for a bare tube."
          line="Bore"
          columns={boreColumns}
          rows={[{}, {}, {}, {}, {}, {}, {}]}
        />
        <div className="form-actions">
          <SubmitButton>Record the configuration</SubmitButton>
        </div>
      </ActionForm>
    </Page>
  );
}
