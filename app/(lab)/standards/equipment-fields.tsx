import { NumberField } from "@/app/_ui/number-field.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { Particulars } from "@/lib/domain/equipment/particulars";
import type { EquipmentKind } from "@/lib/domain/equipment/types";
import { particularsFigures } from "./particulars-figures";
import { type Known, ParticularsWords } from "./particulars-words";

type Described = { readonly maker: string; readonly model: string; readonly serial: string };

export function DescribedFields({ equipment }: { readonly equipment?: Described }) {
  return (
    <>
      <TextField name="maker" label="Maker" defaultValue={equipment?.maker} />
      <TextField name="model" label="Model" optional defaultValue={equipment?.model} />
      <TextField name="serial" label="Serial number" defaultValue={equipment?.serial} />
    </>
  );
}

type Props = { readonly kind: EquipmentKind; readonly particulars?: Particulars };

export function ParticularsFields({ kind, particulars }: Props) {
  const known = (particulars ?? {}) as Known;
  return (
    <>
      <input type="hidden" name="particulars.kind" value={kind} />
      <ParticularsWords kind={kind} known={known} />
      {particularsFigures[kind].map((figure) => (
        <NumberField
          key={figure.name}
          name={`particulars.${figure.name}`}
          label={figure.label}
          unit={figure.unit}
          hint={figure.hint}
          optional={figure.optional}
          defaultValue={known[figure.name]}
        />
      ))}
      {kind === "junction" ? (
        <TextField
          name="particulars.block"
          label="Block"
          hint="Junctions that name the same block share its thermometer, and its error."
          optional
          defaultValue={known.block as string | undefined}
        />
      ) : null}
      {kind === "furnace" ? null : (
        <TextArea
          name="particulars.basis"
          label="What these figures rest on"
          hint="Such as its calibration history or a measurement of your own, with its date. It stands in the evidence."
          rows={2}
          defaultValue={known.basis as string | undefined}
        />
      )}
    </>
  );
}
