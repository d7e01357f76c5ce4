import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { Section } from "@/app/_ui/section";
import type { ShapeName } from "@/app/_ui/shape";
import { StateMark, type Tone } from "@/app/_ui/state-mark";
import { partLabels } from "@/lib/domain/parts/labels";
import type { Part, PartState } from "@/lib/domain/parts/parts-of";
import type { OrderParts } from "@/lib/views/order/parts";

/** Fuller the further it is; square where it did not come to a result. */
const marks: Readonly<Record<PartState, readonly [ShapeName, Tone]>> = {
  waiting: ["dotted-ring", "rest"],
  "not-to-be": ["open-square", "rest"],
  planned: ["ring", "plain"],
  measured: ["half-disc", "plain"],
  invalid: ["open-square", "bad"],
  "not-reached": ["dotted-ring", "watch"],
  "in-review": ["half-disc", "watch"],
  kept: ["disc", "plain"],
  "set-aside": ["half-square", "watch"],
  reported: ["disc", "good"],
  withdrawn: ["square", "bad"],
};

function Cell({ part }: { readonly part: Part }) {
  const [shape, tone] = marks[part.state];
  const mark = (
    <StateMark
      state={part.state}
      label={part.by ? `Reported by ${part.by}` : partLabels[part.state]}
      shape={shape}
      tone={tone}
    />
  );
  if (part.certificate) return <Link href={`/certificates/${part.certificate}`}>{mark}</Link>;
  return part.run ? (
    <Link href={`/runs/${part.run}`} title={`Run ${part.run}`}>
      {mark}
    </Link>
  ) : (
    mark
  );
}

const columnsOf = (line: OrderParts[number]) => [
  { key: "sensor", header: "Sensor" },
  ...line.setpoints.map((setpoint, index) => ({ key: String(index), header: setpoint })),
  { key: "next", header: "Next" },
];

const rowsOf = (line: OrderParts[number]) =>
  line.sensors.flatMap((sensor) =>
    sensor.rows.map((row, at) => ({
      key: `${sensor.tag} ${row.set}`,
      cells: {
        sensor: (
          <>
            <Link href={`/sensors/${sensor.tag}`}>{sensor.tag}</Link>{" "}
            <span className="quiet">
              {sensor.serial}
              {row.label ? `, ${row.label.toLowerCase()}` : ""}
            </span>
          </>
        ),
        ...Object.fromEntries(
          row.cells.map((part, index) => [String(index), <Cell key={line.setpoints[index]} part={part} />]),
        ),
        next: at === 0 ? sensor.next : "",
      },
    })),
  );

/** Sensors down, ordered setpoints across: how far each is, and what comes next for it. */
export function PartsMatrix({ lines }: { readonly lines: OrderParts }) {
  if (lines.length === 0) return null;
  return (
    <Section title="Progress" id="progress" wide>
      {lines.map((line) => (
        <DataTable
          key={line.position}
          caption={`Line ${line.position}: each sensor at each setpoint`}
          columns={columnsOf(line)}
          rows={rowsOf(line)}
          scrolls
        />
      ))}
    </Section>
  );
}
