import { FieldList } from "@/app/_ui/field-list";
import { Section } from "@/app/_ui/section";
import type { FurnaceView } from "@/lib/views/furnace";

const inUnit = (value: number | null, unit: string): string => (value === null ? "" : `${value} ${unit}`);

/** What the furnace is, field by field; what was not recorded says so. */
export function FurnaceRecord({ furnace }: { readonly furnace: FurnaceView }) {
  const { controllerSetpoints: held, rampUpCelsiusPerHour: up, rampDownCelsiusPerHour: down } = furnace;
  return (
    <Section title="Record">
      <FieldList
        items={[
          { label: "Maker", value: furnace.maker },
          { label: "Serial number", value: furnace.serial },
          { label: "Range", value: `${furnace.minimumCelsius} °C to ${furnace.maximumCelsius} °C` },
          {
            label: "Tube",
            value: `bore ${furnace.boreMillimetre} mm, length ${furnace.lengthMillimetre} mm`,
          },
          { label: "Heated zones", value: String(furnace.zones) },
          { label: "Depth of best uniformity", value: inUnit(furnace.bestImmersionMillimetre, "mm") },
          { label: "Length used about it", value: inUnit(furnace.workingLengthMillimetre, "mm") },
          {
            label: "Ramps",
            value:
              up === null && down === null
                ? ""
                : [up && `up at most ${up} °C/h`, down && `down at most ${down} °C/h`]
                    .filter(Boolean)
                    .join(", "),
          },
          {
            label: "Controller set to",
            value: held
              .map(({ celsius, controllerCelsius }) => `${controllerCelsius} °C for ${celsius} °C`)
              .join("; "),
          },
        ]}
      />
    </Section>
  );
}
