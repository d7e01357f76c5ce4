import { ChoiceCell, TextCell } from "@/app/_ui/cell-fields.client";
import { DataTable } from "@/app/_ui/data-table";
import type { RunGateView } from "@/lib/views/run/run-gate";

type Bench = RunGateView["bench"];

const channelColumns = [
  { key: "channel", header: "Channel" },
  { key: "item", header: "What stands on it" },
  { key: "recorded", header: "Recorded today", unit: "µV", align: "number" as const },
  { key: "reads", header: "Reads now", unit: "µV" },
];

export function ChannelCells({ channels }: { readonly channels: Bench["channels"] }) {
  return (
    <DataTable
      caption="Channels of this load, shorted one after another"
      captionUnseen
      columns={channelColumns}
      rows={channels.map(({ channel, item, microvolt }, index) => ({
        key: channel,
        cells: {
          channel,
          item,
          recorded: microvolt ?? "",
          reads: (
            <>
              <input type="hidden" name={`channels.${index}.channel`} value={channel} />
              <TextCell
                name={`channels.${index}.microvolt`}
                label={`Channel ${channel} shorted, µV`}
                isNumber
              />
            </>
          ),
        },
      }))}
    />
  );
}

const junctionColumns = [
  { key: "junction", header: "Junction" },
  { key: "stated", header: "Stated", unit: "°C", align: "number" as const },
  { key: "recorded", header: "Recorded today", unit: "°C", align: "number" as const },
  { key: "thermometer", header: "Thermometer" },
  { key: "reads", header: "It reads", unit: "°C" },
];

type JunctionProps = {
  readonly junctions: Bench["junctions"];
  readonly thermometers: readonly string[];
};

export function JunctionCells({ junctions, thermometers }: JunctionProps) {
  const choices = thermometers.map((tag) => ({ value: tag, label: tag }));
  return (
    <DataTable
      caption="Reference junctions of this load and the thermometer beside each"
      captionUnseen
      columns={junctionColumns}
      rows={junctions.map(({ junction, statedCelsius, thermometer, thermometerCelsius }, index) => ({
        key: junction,
        cells: {
          junction,
          stated: statedCelsius,
          recorded: thermometerCelsius ?? "",
          thermometer: (
            <ChoiceCell
              name={`junctions.${index}.thermometer`}
              label={`Thermometer beside ${junction}`}
              choices={choices}
              defaultValue={thermometer ?? undefined}
            />
          ),
          reads: (
            <>
              <input type="hidden" name={`junctions.${index}.junction`} value={junction} />
              <TextCell
                name={`junctions.${index}.thermometerCelsius`}
                label={`Thermometer beside ${junction} reads, °C`}
                isNumber
              />
            </>
          ),
        },
      }))}
    />
  );
}
