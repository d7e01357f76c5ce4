import { NumberField } from "@/app/_ui/number-field.client";
import { TextField } from "@/app/_ui/text-field.client";

type Furnace = {
  readonly name: string;
  readonly maker: string;
  readonly serial: string;
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
  readonly boreMillimetre: number;
  readonly lengthMillimetre: number;
};

export function FurnaceFields({ furnace }: { readonly furnace?: Furnace }) {
  return (
    <>
      <TextField name="name" label="Name" defaultValue={furnace?.name} />
      <TextField name="maker" label="Maker" defaultValue={furnace?.maker} />
      <TextField name="serial" label="Serial number" defaultValue={furnace?.serial} />
      <NumberField
        name="minimumCelsius"
        label="Lowest temperature used"
        unit="°C"
        defaultValue={furnace?.minimumCelsius}
      />
      <NumberField
        name="maximumCelsius"
        label="Highest temperature used"
        unit="°C"
        hint="At most what its hardware cutout is set to."
        defaultValue={furnace?.maximumCelsius}
      />
      <NumberField name="boreMillimetre" label="Bore" unit="mm" defaultValue={furnace?.boreMillimetre} />
      <NumberField
        name="lengthMillimetre"
        label="Length of the tube"
        unit="mm"
        defaultValue={furnace?.lengthMillimetre}
      />
    </>
  );
}
