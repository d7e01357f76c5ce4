import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { Hash } from "@/app/_ui/hash";
import { Quantity } from "@/app/_ui/quantity";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { ReviewCell, ReviewRunPage } from "@/lib/views/review-run";

function Cell({ cell }: { readonly cell: ReviewCell | null }) {
  if (!cell) return <span className="quiet">none</span>;
  if (cell.state !== "measured")
    return (
      <Link href={cell.href} data-step title={cell.reason}>
        <StateMark state={cell.state} />
      </Link>
    );
  return (
    <>
      <Link href={cell.href} data-step title={`Largest contribution: ${cell.dominant}`}>
        <Quantity value={cell.errorCelsius} uncertainty={cell.expandedCelsius} />
      </Link>{" "}
      {cell.conformity === "no-statement" ? null : <StateMark state={cell.conformity} />}{" "}
      {cell.isOutsideScope ? <StateMark state="outside-scope" /> : null}
    </>
  );
}

/** Sensors down, setpoints across; each result opens. Error ± U in °C: indication minus reference. */
export function ResultMatrix({ review }: { readonly review: ReviewRunPage }) {
  return (
    <Section title="Results" note="Error ± U: indication minus reference. Each opens what it rests on." wide>
      <DataTable
        caption="Error and U of each sensor at each setpoint"
        captionUnseen
        columns={[
          { key: "sensor", header: "Sensor" },
          { key: "owner", header: "Serial, customer" },
          ...review.setpoints.map(({ position, label }) => ({
            key: String(position),
            header: label,
            unit: "error ± U, °C",
          })),
          { key: "content", header: "Certificate" },
        ]}
        rows={review.sensors.map((sensor) => ({
          key: sensor.id,
          cells: {
            sensor: (
              <>
                <Link href={`/sensors/${sensor.tag}`}>{sensor.tag}</Link>{" "}
                <TypeLetter letter={sensor.typeLetter} />
              </>
            ),
            owner: (
              <span className="quiet">
                {sensor.serial}, {sensor.customer}
              </span>
            ),
            ...Object.fromEntries(
              review.setpoints.map(({ position }, index) => [
                String(position),
                <Cell key={position} cell={sensor.cells[index] ?? null} />,
              ]),
            ),
            content: sensor.certificate ? (
              <Link href={`/certificates/${sensor.certificate}`}>{sensor.certificate}</Link>
            ) : sensor.reviewedHash ? (
              <>
                <a href={`/api/review/${review.number}/${sensor.tag}/draft`} target="_blank" rel="noreferrer">
                  Draft (PDF)
                </a>
                <br />
                <Hash value={sensor.reviewedHash} label="Content hash" />
                {sensor.findings.map((finding) => (
                  <StateMark key={finding} state="exception" label={finding} />
                ))}
              </>
            ) : sensor.left ? (
              <StateMark
                state={sensor.left.results === "kept" ? "done" : "returned"}
                label={sensor.left.results === "kept" ? "Kept for its certificate" : "Set aside"}
              />
            ) : (
              <StateMark state="exception" label={sensor.obstacle} tone="bad" />
            ),
          },
        }))}
      />
    </Section>
  );
}
