import { DataTable } from "@/app/_ui/data-table";
import { FieldList } from "@/app/_ui/field-list";
import { StateMark } from "@/app/_ui/state-mark";
import type { IntakePreview } from "@/lib/views/order/intake-preview";

const columns = [
  { key: "serial", header: "Serial" },
  { key: "row", header: "Row", align: "number" as const },
  { key: "own", header: "What it differs in" },
  { key: "limits", header: "Limits" },
];

type Props = { readonly group: IntakePreview["groups"][number] };

/** The sensors a list has for one order line: what all share, then each with what it differs in. */
export function PreviewTable({ group }: Props) {
  return (
    <>
      <h3>
        Line {group.position}: {group.sensors.length} of {group.toCome} to come, type {group.typeLetter},{" "}
        {group.construction}
      </h3>
      <FieldList columns items={group.shared} />
      <DataTable
        caption={`Sensors of line ${group.position} in the list`}
        captionUnseen
        columns={columns}
        rows={group.sensors.map((sensor) => ({
          key: String(sensor.row),
          tone: sensor.outside.length > 0 || sensor.stillHereAs ? ("watch" as const) : undefined,
          cells: {
            serial: sensor.stillHereAs ? (
              <>
                {sensor.serial}{" "}
                <StateMark
                  state="still-here"
                  shape="triangle"
                  tone="watch"
                  label={`${sensor.stillHereAs} with this serial is still here`}
                />
              </>
            ) : (
              sensor.serial
            ),
            row: sensor.row,
            own: sensor.own.map(({ label, value }) => `${label}: ${value}`).join("; "),
            limits:
              sensor.outside.length > 0 ? (
                <>
                  <StateMark state="fail" label="Outside" /> {sensor.outside.join("; ")}
                </>
              ) : (
                ""
              ),
          },
        }))}
      />
    </>
  );
}
