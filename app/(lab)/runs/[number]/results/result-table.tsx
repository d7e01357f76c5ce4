import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { decimalRoom } from "@/app/_ui/decimal-room";
import { EmptyState } from "@/app/_ui/empty-state";
import { Quantity } from "@/app/_ui/quantity";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { RunResultsView } from "@/lib/views/run/run-results";
import { celsiusText } from "../../run-marks";

type Point = RunResultsView["sensors"][number]["points"][number];
type CellProps = {
  readonly point: Point;
  readonly href: string;
  readonly align: ReturnType<typeof decimalRoom>;
};

/** So that the decimal marks of a setpoint stand under each other. */
const roomAt = (sensors: RunResultsView["sensors"], index: number) =>
  decimalRoom(
    sensors.map(({ points }) => {
      const point = points[index];
      return point?.state === "measured" ? point.printed.errorCelsius : null;
    }),
  );

function Cell({ point, href, align }: CellProps) {
  if (!point) return <span className="quiet">none</span>;
  if (point.state !== "measured")
    return (
      <Link href={href} title={point.reason}>
        <StateMark state={point.state} />
      </Link>
    );
  const { printed, conformity, scope } = point;
  return (
    <>
      <Quantity
        value={printed.errorCelsius}
        uncertainty={printed.expandedCelsius}
        href={href}
        align={align}
      />
      <br />
      {conformity.state === "no-statement" ? null : <StateMark state={conformity.state} />}{" "}
      {scope.state === "outside" ? <StateMark state="outside-scope" /> : null}
    </>
  );
}

/** Sensors down, setpoints across: error ± U in °C, with the statement of conformity. Each opens what it rests on. */
export function ResultTable({ view }: { readonly view: RunResultsView }) {
  const { head, sensors } = view;
  return (
    <DataTable
      caption="Error and U of each sensor at each setpoint"
      captionUnseen
      columns={[
        { key: "sensor", header: "Sensor" },
        ...head.setpoints.map(({ id, celsius }) => ({
          key: id,
          header: `${celsiusText(celsius)} °C`,
          unit: "error ± U, °C",
          align: "number" as const,
        })),
      ]}
      rows={sensors.map((sensor) => ({
        key: sensor.tag,
        cells: {
          sensor: (
            <>
              <Link href={`/sensors/${sensor.tag}`}>{sensor.tag}</Link> <TypeLetter letter={sensor.type} />
              <br />
              <span className="quiet">
                {sensor.serial}, {sensor.customer}
              </span>
            </>
          ),
          ...Object.fromEntries(
            head.setpoints.map(({ id, position }, index) => [
              id,
              <Cell
                key={id}
                point={sensor.points[index] ?? null}
                href={`/review/${head.number}/${sensor.tag}/${position}`}
                align={roomAt(sensors, index)}
              />,
            ]),
          ),
        },
      }))}
      empty={<EmptyState title="No sensors">This run has no sensors.</EmptyState>}
    />
  );
}
