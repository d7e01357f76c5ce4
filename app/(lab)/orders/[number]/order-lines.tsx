import Link from "next/link";
import { CertificateName } from "@/app/_ui/certificate-name";
import { DataTable } from "@/app/_ui/data-table";
import { Notice } from "@/app/_ui/notice";
import { StateMark } from "@/app/_ui/state-mark";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { OrderPage } from "@/lib/views/order/order";
import { sensorMarks } from "../../sensors/sensor-marks";

type Line = OrderPage["lines"][number];

const setpointColumns = [
  { key: "setpoint", header: "Setpoint", align: "number" as const },
  { key: "tolerance", header: "Tolerance" },
];

const sensorColumns = [
  { key: "tag", header: "Sensor" },
  { key: "serial", header: "Serial" },
  { key: "state", header: "State" },
  { key: "certificate", header: "Certificate" },
];

const sensorRow = (sensor: Line["sensors"][number]) => ({
  key: sensor.tag,
  cells: {
    tag: <Link href={`/sensors/${sensor.tag}`}>{sensor.tag}</Link>,
    serial: sensor.serial,
    state: (
      <>
        <StateMark {...sensorMarks(sensor.state)} />
        {sensor.isReplaced ? (
          <span className="quiet"> not measured; another in its place, so not counted</span>
        ) : null}
      </>
    ),
    certificate:
      sensor.certificates.length === 0 ? null : (
        <ul className="list">
          {sensor.certificates.map(({ number, standing }) => (
            <li key={number}>
              <CertificateName number={number} standing={standing} />
            </li>
          ))}
        </ul>
      ),
  },
});

const Setpoints = ({ line }: { readonly line: Line }) => (
  <DataTable
    caption={
      line.tolerance === ""
        ? "Setpoints; no tolerance is asked for."
        : `Setpoints; judged by: ${line.tolerance}.`
    }
    columns={line.tolerance === "" ? setpointColumns.slice(0, 1) : setpointColumns}
    rows={line.setpoints.map((point) => ({
      key: point.setpoint,
      cells: {
        setpoint: point.celsius ? (
          <>
            {point.setpoint} <span className="quiet">= {point.celsius}</span>
          </>
        ) : (
          point.setpoint
        ),
        tolerance:
          point.state === "not-defined" ? <StateMark state="no-tolerance-defined" /> : point.tolerance,
      },
    }))}
    empty={<p className="quiet">No setpoints yet. They are needed before the order is accepted.</p>}
  />
);

/** One line: what is to be done, at which temperatures, and the sensors that came for it. */
export function OrderLineDetails({ line }: { readonly line: Line }) {
  return (
    <article className="stack">
      <h3>
        Line {line.position}: {line.quantity} × <TypeLetter letter={line.typeLetter} labelled />
        {line.group ? `, ${line.group}` : ""}
      </h3>
      <p>
        {line.construction} <span className="quiet">({line.protection.toLowerCase()})</span>
      </p>
      <div style={{ maxWidth: "30rem" }}>
        <Setpoints line={line} />
      </div>
      {line.use ? <p>{line.use}</p> : null}
      {line.options.length > 0 ? (
        <ul className="list">
          {line.options.map((option) => (
            <li key={option}>{option}</li>
          ))}
        </ul>
      ) : null}
      {line.where ? (
        <Notice kind="info" title="Not done in this laboratory">
          {line.where} The certificate says so (ISO/IEC 17025:2017, 7.8.2.1).
        </Notice>
      ) : null}
      <DataTable
        caption={`Sensors received: ${line.received} of ${line.quantity}.`}
        columns={sensorColumns}
        rows={line.sensors.map(sensorRow)}
        empty={<p className="quiet">No sensor of this line has been received yet.</p>}
      />
    </article>
  );
}
