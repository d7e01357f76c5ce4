import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { decimalRoom } from "@/app/_ui/decimal-room";
import { Quantity } from "@/app/_ui/quantity";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import type { SensorPage } from "@/lib/views/sensor/sensor";

const columns = [
  { key: "setpoint", header: "Setpoint", unit: "°C", align: "number" as const },
  { key: "error", header: "Error ± U", unit: "°C", align: "number" as const },
  { key: "state", header: "State" },
  { key: "conformity", header: "Conformity" },
];

/** The last evaluation's results; each number opens what it rests on, for those who may see reviews. */
export function SensorResults({ sensor }: { readonly sensor: SensorPage }) {
  const run = sensor.runs[0];
  if (!run || sensor.results.length === 0) return null;
  const errors = decimalRoom(sensor.results.map(({ error }) => error || null));
  return (
    <Section
      title="Results"
      id="results"
      note={<>Of run {run.number}, as last evaluated. Certificates state what was signed off.</>}
    >
      <DataTable
        caption={`Results of ${sensor.tag}`}
        captionUnseen
        columns={columns}
        rows={sensor.results.map((result) => ({
          key: String(result.position),
          cells: {
            setpoint: sensor.maySeeReview ? (
              <Link href={`/review/${run.number}/${sensor.tag}/${result.position}`}>
                {result.nominalCelsius}
              </Link>
            ) : (
              result.nominalCelsius
            ),
            error: result.error ? (
              <Quantity value={result.error} uncertainty={result.expanded} align={errors} />
            ) : (
              <span className="quiet">{result.reason}</span>
            ),
            state: <StateMark state={result.state} />,
            conformity: result.conformity ? <StateMark state={result.conformity} /> : "",
          },
        }))}
      />
    </Section>
  );
}
