import Link from "next/link";
import { CertificateName } from "@/app/_ui/certificate-name";
import { DataTable } from "@/app/_ui/data-table";
import { Hash } from "@/app/_ui/hash";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { ReviewRunPage } from "@/lib/views/review-run";
import { MatrixCell } from "./matrix-cell";

type Sensor = ReviewRunPage["sensors"][number];

const Left = ({ results }: NonNullable<Sensor["left"]>) => (
  <StateMark
    state={results === "kept" ? "done" : "returned"}
    label={results === "kept" ? "Kept for its certificate" : "Set aside"}
  />
);

/** What its certificate would say, or what became of it. */
const SensorContent = ({ review, sensor }: { readonly review: ReviewRunPage; readonly sensor: Sensor }) => {
  if (sensor.certificate) return <CertificateName {...sensor.certificate} />;
  if (sensor.left) return <Left {...sensor.left} />;
  return (
    <div className="lines wraps">
      {sensor.draftHash ? (
        <>
          <a href={`/api/review/${review.number}/${sensor.tag}/draft`} target="_blank" rel="noreferrer">
            Draft (PDF)
          </a>
          <Hash value={sensor.draftHash} label="Content hash" />
        </>
      ) : sensor.isPerLot && sensor.obstacle === "" && sensor.holds.length === 0 ? (
        <a href="#lots">On the lot’s certificate</a>
      ) : null}
      {sensor.holds.map(({ href, name, words }) => (
        <span key={name}>
          <StateMark state="exception" label={words} tone="bad" /> <Link href={href}>{name}</Link>
        </span>
      ))}
      {[...sensor.findings, ...(sensor.obstacle === "" ? [] : [sensor.obstacle])].map((finding) => (
        <StateMark
          key={finding}
          state="exception"
          label={finding}
          {...(finding === sensor.obstacle ? { tone: "bad" as const } : {})}
        />
      ))}
    </div>
  );
};

/** Sensors down, setpoints across; each result opens. Error ± U in °C: indication minus reference. */
export function ResultMatrix({ review }: { readonly review: ReviewRunPage }) {
  return (
    <Section
      title="Results"
      note="Error ± U: indication minus reference; Δ: to the last calibration; last, what most of u² comes from. Each opens what it rests on. ! must be opened, ? drawn by lot, ✓ opened by you."
      wide
    >
      <DataTable
        caption="Error and U of each sensor at each setpoint"
        captionUnseen
        scrolls
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
                {sensor.openRemarks > 0 ? (
                  <StateMark
                    state="exception"
                    label={sensor.openRemarks === 1 ? "1 open remark" : `${sensor.openRemarks} open remarks`}
                  />
                ) : null}
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
                <MatrixCell key={position} cell={sensor.cells[index] ?? null} />,
              ]),
            ),
            content: <SensorContent review={review} sensor={sensor} />,
          },
        }))}
      />
    </Section>
  );
}
