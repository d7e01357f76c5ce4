import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import {
  leadInsulationLabels,
  leadInsulations,
  type SensorBuild,
  sheathFormLabels,
  sheathForms,
  sheathMaterialLabels,
  sheathMaterials,
} from "@/lib/domain/sensor/build";
import { earlierUseLabels } from "@/lib/domain/sensor/build-draft";

const choicesOf = <T extends string>(values: readonly T[], labels: Readonly<Record<T, string>>) => [
  { value: "", label: "Not stated" },
  ...values.map((value) => ({ value, label: labels[value] })),
];

const uses = (["", "new", "used"] as const).map((value) => ({ value, label: earlierUseLabels[value] }));

const earlierUseOf = (build: SensorBuild): string =>
  build.isUsed === undefined ? "" : build.isUsed ? "used" : "new";

type Props = { readonly build?: SensorBuild };

/** How the sensors are made and what they have seen; the gate before the run asks for it. */
export function BuildFields({ build = {} }: Props) {
  return (
    <FieldGroup
      legend="How they are made"
      hint="The gate before the run looks at this. Left empty, it counts as not stated, never as harmless."
    >
      <div className="fields">
        <SelectField
          name="sheath"
          label="Sheath"
          optional
          choices={choicesOf(sheathForms, sheathFormLabels)}
          defaultValue={build.sheath}
        />
        <NumberField
          name="sheathMillimetre"
          label="Outer diameter"
          unit="mm"
          optional
          defaultValue={build.sheathMillimetre}
        />
        <SelectField
          name="sheathMaterial"
          label="Sheath material"
          optional
          choices={choicesOf(sheathMaterials, sheathMaterialLabels)}
          defaultValue={build.sheathMaterial}
        />
        <NumberField
          name="wireMillimetre"
          label="Wire diameter"
          unit="mm"
          optional
          defaultValue={build.wireMillimetre}
        />
      </div>
      <div className="fields">
        <NumberField
          name="lengthMillimetre"
          label="Length from the tip to the lead"
          unit="mm"
          optional
          hint="To where the lead, its transition or the head begins."
          defaultValue={build.lengthMillimetre}
        />
        <SelectField
          name="leadInsulation"
          label="Lead insulation"
          optional
          choices={choicesOf(leadInsulations, leadInsulationLabels)}
          hint="PTFE, PFA and PVC near heat give off toxic fumes."
          defaultValue={build.leadInsulation}
        />
      </div>
      <div className="fields">
        <SelectField
          name="use"
          label="Before it came"
          optional
          choices={uses}
          defaultValue={earlierUseOf(build)}
        />
        <NumberField
          name="highestUsedCelsius"
          label="Highest it has seen"
          unit="°C"
          optional
          defaultValue={build.highestUsedCelsius}
        />
        <NumberField
          name="deepestUsedMillimetre"
          label="Deepest it has stood"
          unit="mm"
          optional
          defaultValue={build.deepestUsedMillimetre}
        />
      </div>
    </FieldGroup>
  );
}
