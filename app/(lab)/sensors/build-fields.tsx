import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextField } from "@/app/_ui/text-field.client";
import {
  connectorLabels,
  connectors,
  leadInsulationLabels,
  leadInsulations,
  rollEndLabels,
  rollEnds,
  type SensorBuild,
  sheathFormLabels,
  sheathForms,
  sheathMaterialLabels,
  sheathMaterials,
  wireInsulationLabels,
  wireInsulations,
} from "@/lib/domain/sensor/build";
import { earlierUseLabels, earlierUseOf, uses as useWords } from "@/lib/domain/sensor/build-draft";

const choicesOf = <T extends string>(values: readonly T[], labels: Readonly<Record<T, string>>) => [
  { value: "", label: "Not stated" },
  ...values.map((value) => ({ value, label: labels[value] })),
];

const uses = useWords.map((value) => ({ value, label: earlierUseLabels[value] }));

type Props = {
  readonly build?: SensorBuild;
  /** A rule set asks for lot and roll: they may not stay empty. */
  readonly asksForRolls?: boolean;
};

const Sheath = ({ build }: { readonly build: SensorBuild }) => (
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
      name="lengthMillimetre"
      label="Length from the tip to the lead"
      unit="mm"
      optional
      hint="To where the lead, its transition or the head begins."
      defaultValue={build.lengthMillimetre}
    />
  </div>
);

const WireAndLead = ({ build }: { readonly build: SensorBuild }) => (
  <div className="fields">
    <NumberField
      name="wireMillimetre"
      label="Wire diameter"
      unit="mm"
      optional
      defaultValue={build.wireMillimetre}
    />
    <SelectField
      name="wireInsulation"
      label="Wire insulation"
      optional
      choices={choicesOf(wireInsulations, wireInsulationLabels)}
      defaultValue={build.wireInsulation}
    />
    <SelectField
      name="leadInsulation"
      label="Lead insulation"
      optional
      choices={choicesOf(leadInsulations, leadInsulationLabels)}
      hint="PTFE, PFA and PVC near heat give off toxic fumes."
      defaultValue={build.leadInsulation}
    />
    <NumberField
      name="leadMillimetre"
      label="Lead length"
      unit="mm"
      optional
      defaultValue={build.leadMillimetre}
    />
    <SelectField
      name="connector"
      label="Connector"
      optional
      choices={choicesOf(connectors, connectorLabels)}
      defaultValue={build.connector}
    />
  </div>
);

const Material = ({ build, asksForRolls }: Props & { readonly build: SensorBuild }) => (
  <div className="fields">
    <TextField
      name="lot"
      label="Lot"
      optional={!asksForRolls}
      maxLength={60}
      hint="Heat or batch."
      defaultValue={build.lot}
    />
    <TextField name="roll" label="Roll" optional={!asksForRolls} maxLength={60} defaultValue={build.roll} />
    <SelectField
      name="end"
      label="End of the roll"
      optional
      choices={choicesOf(rollEnds, rollEndLabels)}
      defaultValue={build.end}
    />
  </div>
);

const History = ({ build }: { readonly build: SensorBuild }) => (
  <div className="fields">
    <SelectField
      name="use"
      label="Before it came"
      optional
      choices={uses}
      defaultValue={earlierUseOf(build)}
      hint="Ask the customer."
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
    <NumberField name="usedHours" label="Hours at heat" unit="h" optional defaultValue={build.usedHours} />
    <TextField
      name="usedIn"
      label="Used in"
      optional
      maxLength={120}
      hint="Atmosphere or process."
      defaultValue={build.usedIn}
    />
  </div>
);

/** How the sensors are made and what they have seen; the gate before the run asks for it. */
export function BuildFields({ build = {}, asksForRolls }: Props) {
  return (
    <FieldGroup
      legend="How they are made"
      hint="The gate before the run looks at this. Left empty, it counts as not stated, never as harmless."
    >
      <Sheath build={build} />
      <WireAndLead build={build} />
      <Material build={build} asksForRolls={asksForRolls} />
      <History build={build} />
    </FieldGroup>
  );
}
