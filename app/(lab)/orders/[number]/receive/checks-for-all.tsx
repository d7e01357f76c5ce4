import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { SelectField } from "@/app/_ui/select-field.client";
import { TextField } from "@/app/_ui/text-field.client";
import {
  conditionLabels,
  conditions,
  groundingLabels,
  groundings,
  polarities,
  polarityLabels,
  typeCheckLabels,
  typeChecks,
} from "@/lib/domain/sensor/labels";

const choicesOf = <T extends string>(values: readonly T[], labels: Readonly<Record<T, string>>) =>
  values.map((value) => ({ value, label: labels[value] }));

/** What holds for all sensors of the paste, unless one says otherwise. */
export function ChecksForAll() {
  return (
    <FieldGroup legend="For all of them" hint="Each sensor can differ, in the table below.">
      <div className="fields">
        <SelectField name="condition" label="Condition" choices={choicesOf(conditions, conditionLabels)} />
        <TextField name="conditionNote" label="What deviates or is damaged" optional maxLength={400} />
      </div>
      <div className="fields">
        <NumberField name="loopResistanceOhm" label="Loop resistance" unit="Ω" optional />
        <NumberField
          name="insulationMegaohm"
          label="Insulation resistance"
          unit="MΩ"
          optional
          hint="Wires to sheath, cold."
        />
        <SelectField
          name="polarity"
          label="Polarity"
          choices={choicesOf(polarities, polarityLabels)}
          hint="By warming the tip."
        />
        <SelectField
          name="typeCheck"
          label="Type check"
          choices={choicesOf(typeChecks, typeCheckLabels)}
          hint="By a reading near 100 °C."
        />
        <SelectField
          name="grounding"
          label="Measuring junction"
          choices={choicesOf(groundings, groundingLabels)}
          hint="By the insulation, wires to sheath."
        />
      </div>
    </FieldGroup>
  );
}
