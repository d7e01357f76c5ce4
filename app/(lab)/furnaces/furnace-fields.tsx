import { FieldGroup } from "@/app/_ui/field-group";
import { NumberField } from "@/app/_ui/number-field.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { ControllerSetpoint } from "@/lib/domain/furnace/types";
import { RowGrid } from "./row-grid.client";

type Furnace = {
  readonly name: string;
  readonly maker: string;
  readonly serial: string;
  readonly minimumCelsius: number;
  readonly maximumCelsius: number;
  readonly boreMillimetre: number;
  readonly lengthMillimetre: number;
  readonly zones: number;
  readonly bestImmersionMillimetre: number | null;
  readonly workingLengthMillimetre: number | null;
  readonly controllerSetpoints: readonly ControllerSetpoint[];
  readonly rampUpCelsiusPerHour: number | null;
  readonly rampDownCelsiusPerHour: number | null;
};

const known = (value: number | null | undefined): number | undefined => value ?? undefined;

function TubeFields({ furnace }: { readonly furnace?: Furnace }) {
  return (
    <FieldGroup legend="Tube" columns>
      <NumberField name="boreMillimetre" label="Bore" unit="mm" defaultValue={furnace?.boreMillimetre} />
      <NumberField
        name="lengthMillimetre"
        label="Length of the tube"
        unit="mm"
        defaultValue={furnace?.lengthMillimetre}
      />
      <NumberField name="zones" label="Heated zones" defaultValue={furnace?.zones ?? 1} />
      <NumberField
        name="bestImmersionMillimetre"
        label="Depth of best uniformity"
        unit="mm"
        optional
        hint="From the mouth of the tube; a characterisation finds it. About 350 mm is common practice, no source."
        defaultValue={known(furnace?.bestImmersionMillimetre)}
      />
      <NumberField
        name="workingLengthMillimetre"
        label="Length used about it"
        unit="mm"
        optional
        defaultValue={known(furnace?.workingLengthMillimetre)}
      />
    </FieldGroup>
  );
}

function ControllerFields({ furnace }: { readonly furnace?: Furnace }) {
  const held = furnace?.controllerSetpoints ?? [];
  return (
    <>
      <FieldGroup
        legend="Ramps"
        hint="What the tube bears: ceramic tubes crack when they are heated or cooled faster than their maker allows."
        columns
      >
        <NumberField
          name="rampUpCelsiusPerHour"
          label="Fastest rise"
          unit="°C/h"
          optional
          defaultValue={known(furnace?.rampUpCelsiusPerHour)}
        />
        <NumberField
          name="rampDownCelsiusPerHour"
          label="Fastest fall"
          unit="°C/h"
          optional
          defaultValue={known(furnace?.rampDownCelsiusPerHour)}
        />
      </FieldGroup>
      <RowGrid
        name="controllerSetpoints"
        legend="What its controller is set to"
        hint="For a temperature at the working depth. Leave the lines empty where it is not known."
        line="Setpoint"
        columns={[
          { key: "celsius", header: "At the working depth", unit: "°C" },
          { key: "controllerCelsius", header: "Controller", unit: "°C" },
        ]}
        rows={
          held.length > 0
            ? held.map((one) => ({
                celsius: String(one.celsius),
                controllerCelsius: String(one.controllerCelsius),
              }))
            : [{}, {}, {}]
        }
        more={3}
      />
    </>
  );
}

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
      <TubeFields furnace={furnace} />
      <ControllerFields furnace={furnace} />
    </>
  );
}
