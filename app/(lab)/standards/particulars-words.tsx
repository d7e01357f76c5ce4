import { SelectField } from "@/app/_ui/select-field.client";
import { TextField } from "@/app/_ui/text-field.client";
import { leadFormLabels, platinumElementLabels, protectionLabels } from "@/lib/domain/equipment/labels";
import { leadForms, platinumElements, protections } from "@/lib/domain/equipment/particulars";
import type { EquipmentKind } from "@/lib/domain/equipment/types";
import { ReferenceType, TypeLetter } from "@/lib/domain/evidence/schema";

export type Known = Readonly<Record<string, string | number>>;

const word = (known: Known, name: string) => known[name] as string | undefined;

/** What of a kind is a word and not a figure: type, protection, form, lot. */
export function ParticularsWords({ kind, known }: { readonly kind: EquipmentKind; readonly known: Known }) {
  if (kind === "reference")
    return (
      <>
        <SelectField
          name="particulars.type"
          label="Type"
          prompt="Choose the type letter"
          defaultValue={word(known, "type")}
          choices={ReferenceType.options.map((letter) => ({ value: letter, label: `Type ${letter}` }))}
        />
        <SelectField
          name="particulars.protection"
          label="About the wires"
          hint="Platinum stands beside base metal only in a closed alumina sheath."
          prompt="Choose what stands about them"
          defaultValue={word(known, "protection")}
          choices={protections.map((value) => ({ value, label: protectionLabels[value] ?? value }))}
        />
      </>
    );
  if (kind === "thermometer")
    return (
      <SelectField
        name="particulars.element"
        label="What it is"
        prompt="Choose the kind of thermometer"
        defaultValue={word(known, "element")}
        choices={platinumElements.map((value) => ({ value, label: platinumElementLabels[value] ?? value }))}
      />
    );
  if (kind === "lead")
    return (
      <>
        <SelectField
          name="particulars.form"
          label="What it is"
          prompt="Choose extension or compensating"
          defaultValue={word(known, "form")}
          choices={leadForms.map((value) => ({ value, label: leadFormLabels[value] ?? value }))}
        />
        <SelectField
          name="particulars.type"
          label="For sensors of type"
          prompt="Choose the type letter"
          defaultValue={word(known, "type")}
          choices={TypeLetter.options.map((letter) => ({ value: letter, label: `Type ${letter}` }))}
        />
        <TextField name="particulars.class" label="Class" defaultValue={word(known, "class")} />
        <TextField
          name="particulars.lot"
          label="Lot"
          hint="As on the reel: what was tested was one lot."
          defaultValue={word(known, "lot")}
        />
      </>
    );
  return null;
}
